// What is measured within this process. It is measured as it ships: `builtEngine` bundles this file.

export { makeScript } from '../../server/src/board/layer/make-script';
export { learnedProfile } from '../../server/src/board/learn/learned-profile';
export { confirmedAs } from '../../server/src/board/learn/said';
export { readListing } from '../../server/src/board/listing/read-listing';
export { profileOf } from '../../server/src/board/profile/profile';
export { prove } from '../../server/src/board/proving/prove';
export { entriesOf } from '../../server/src/board/writing/entries';
export { writeText } from '../../server/src/board/writing/write-text';
export { loadCatalog } from '../../server/src/catalog/catalog';
export { CraftView } from '../../server/src/craft/view';
export { learned } from '../../server/src/features/board/learning';
export { buildSheet } from '../../server/src/sheet/build-sheet';
export { find } from '../../server/src/sheet/find/find';
export { wishFor } from '../../server/src/sheet/find/wish';
export { Workspace } from '../../server/src/workspace/workspace';
