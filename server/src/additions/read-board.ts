import { profileFaults } from '../board/profile/profile-faults';
import type { Catalog } from '../catalog/catalog';
import { faultsWithin } from '../catalog/faults/fault';
import { hardwareNumberFaults } from '../catalog/faults/tables';
import { boardFile } from '../catalog/model/addition';
import type { BoardProfile } from '../catalog/model/board-profile';
import type { AdditionProblem } from './problem';
import { type AdditionTree, problemsAt, readShape } from './read-addition';

/** A file that could be read, with its places; or the reasons why it could not. */
export type ReadBoard =
  | { readonly kind: 'read'; readonly board: BoardProfile; readonly tree: AdditionTree }
  | { readonly kind: 'broken'; readonly problems: readonly AdditionProblem[] };

/** A profile has a row for each setting of a board, of which there may be very many. */
const longest = 10_000_000;

/** Reads the profile of the board that its file is named after: its JSON, its shape, its quantities, its name. */
export function readBoard(text: string, name: string): ReadBoard {
  const shaped = readShape(text, boardFile, { longest, mayHaveComments: true });
  if (shaped.kind === 'broken') return shaped;
  const { $schema: _, ...board } = shaped.data;
  const { tree } = shaped;
  const called = {
    at: ['name'],
    message: `a board is called as its file is: ${name}, and not ${board.name}`,
  };
  const problems = [
    ...problemsAt('addition/name', board.name === name ? [] : [called], tree),
    ...problemsAt(
      'addition/value',
      faultsWithin(['hardware'], hardwareNumberFaults(board.hardware ?? {})),
      tree,
    ),
  ];
  return problems.length > 0 ? { kind: 'broken', problems } : { kind: 'read', board, tree };
}

/** What is wrong with a profile in a catalogue: names that lead nowhere, settings that can't be told apart. */
export function profileProblems(
  { board, tree }: Extract<ReadBoard, { kind: 'read' }>,
  catalog: Catalog,
): readonly AdditionProblem[] {
  return problemsAt('addition/reference', profileFaults(board, catalog), tree);
}
