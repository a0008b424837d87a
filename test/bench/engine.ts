// What is measured within this process. It is measured as it ships: `builtEngine` bundles this file.
export { entriesOf } from '../../server/src/board/entries';
export { learnShape } from '../../server/src/board/learn/shape';
export { profileSkeleton } from '../../server/src/board/learn/skeleton';
export { profileOf } from '../../server/src/board/profile/profile';
export { prove } from '../../server/src/board/prove';
export { scriptFromBoardText } from '../../server/src/board/to-script';
export { writeBoardText } from '../../server/src/board/write';
export { loadCatalog } from '../../server/src/catalog/catalog';
export { CraftView } from '../../server/src/craft/view';
export { learned } from '../../server/src/features/board/learning';
export { buildSheet } from '../../server/src/sheet/build-sheet';
export { Workspace } from '../../server/src/workspace/workspace';
