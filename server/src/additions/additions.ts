import { type Catalog, loadCatalog } from '../catalog/catalog';
import type { Addition } from '../catalog/model/addition';
import type { Bundle } from '../catalog/model/bundle';
import { joinedFaults } from './addition-faults';
import { idleChecks, withoutIdle } from './idle-checks';
import { loweringFaults } from './lowered';
import { merged } from './merge';
import { builtInNames, nameFaults } from './names';
import type { AdditionProblem } from './problem';
import { problemsAt, type ReadAddition, readAddition } from './read-addition';
import { replacementsIn } from './replaced';

/** The catalogue with all that the workspace adds, and what is wrong with the files that add it. */
export interface Grown {
  readonly catalog: Catalog;
  /** By file; the empty list for a file that is fine. */
  readonly problems: ReadonlyMap<string, readonly AdditionProblem[]>;
}

interface HeldAddition {
  readonly text: string;
  readonly read: ReadAddition;
}

/**
 * The files of a workspace's `propsoff/` folder. A file with problems is not used: its last state without
 * any stays in use. Files count in the order of their names, so that the same files give the same catalogue.
 */
export class Additions {
  private readonly files = new Map<string, HeldAddition>();
  /** What each file last was without a problem. */
  private good = new Map<string, Addition>();
  private grown: Grown;

  constructor(
    private readonly builtIn: Bundle,
    catalog: Catalog,
    private readonly nameOf: (file: string) => string,
  ) {
    this.grown = { catalog, problems: new Map() };
  }

  get catalog(): Catalog {
    return this.grown.catalog;
  }

  get problems(): ReadonlyMap<string, readonly AdditionProblem[]> {
    return this.grown.problems;
  }

  textOf(file: string): string | undefined {
    return this.files.get(file)?.text;
  }

  /** Takes in files as they now are; null for one that is gone. False when nothing has changed. */
  update(texts: ReadonlyMap<string, string | null>): boolean {
    const changed = [...texts].filter(([file, text]) => (this.files.get(file)?.text ?? null) !== text);
    for (const [file, text] of changed) {
      if (text === null) {
        this.files.delete(file);
        this.good.delete(file);
      } else this.files.set(file, { text, read: readAddition(text) });
    }
    if (changed.length > 0) this.grow();
    return changed.length > 0;
  }

  private grow(): void {
    const used = new Map<string, Addition>();
    const problems = new Map<string, readonly AdditionProblem[]>();
    for (const file of [...this.files.keys()].sort()) {
      const read = this.files.get(file)?.read;
      problems.set(file, read?.kind === 'broken' ? read.problems : []);
      const addition = read?.kind === 'read' ? read.addition : this.good.get(file);
      if (addition !== undefined) used.set(file, addition);
    }
    // A file that drops out may have held what another one names: looked at again until all is well.
    for (;;) {
      const catalog = loadCatalog(merged(this.builtIn, [...used.values()]));
      const faulty = this.faulty(used, catalog);
      if (faulty.size === 0) {
        this.good = used;
        this.grown = { catalog: this.inForce(used, catalog, problems), problems };
        return;
      }
      for (const [file, found] of faulty) {
        if (problems.get(file)?.length === 0) problems.set(file, found);
        const last = this.good.get(file);
        if (last === undefined || last === used.get(file)) used.delete(file);
        else used.set(file, last);
      }
    }
  }

  /** Files with names that are taken or lead nowhere. */
  private faulty(
    used: ReadonlyMap<string, Addition>,
    catalog: Catalog,
  ): ReadonlyMap<string, readonly AdditionProblem[]> {
    const taken = builtInNames(this.builtIn);
    const faulty = new Map<string, readonly AdditionProblem[]>();
    for (const [file, addition] of used) {
      const names = [
        ...nameFaults(addition, this.nameOf(file), taken),
        ...loweringFaults(addition, this.builtIn),
      ];
      const faults = [...names, ...joinedFaults(addition, catalog)];
      if (faults.length === 0) continue;
      const read = this.files.get(file)?.read;
      if (read?.kind !== 'read') faulty.set(file, []);
      else {
        faulty.set(file, [
          ...problemsAt('addition/name', names, read.tree),
          ...problemsAt('addition/reference', faults.slice(names.length), read.tree),
        ]);
      }
    }
    return faulty;
  }

  /** The catalogue without rules that only put others out of force; they are reported. */
  private inForce(
    used: ReadonlyMap<string, Addition>,
    catalog: Catalog,
    problems: Map<string, readonly AdditionProblem[]>,
  ): Catalog {
    const inForce = new Map<string, Addition>();
    for (const [file, addition] of used) {
      const idle = idleChecks(addition, catalog, this.builtIn);
      inForce.set(file, withoutIdle(addition, idle));
      const read = this.files.get(file)?.read;
      if (read?.kind !== 'read' || read.addition !== addition) continue;
      const faults = idle.map(({ fault }) => fault);
      const never = problemsAt('addition/never', faults, read.tree);
      problems.set(file, [...(problems.get(file) ?? []), ...never]);
    }
    const replacements = replacementsIn(inForce, this.builtIn, this.nameOf);
    const isAsItIs = replacements.length === 0 && [...used].every(([file, one]) => inForce.get(file) === one);
    return isAsItIs ? catalog : loadCatalog(merged(this.builtIn, [...inForce.values()]), replacements);
  }
}
