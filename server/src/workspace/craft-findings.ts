import type { BoardLayer } from '../board/layer/layer';
import type { Catalog } from '../catalog/catalog';
import { Checker, type OnFault } from '../checks/checker';
import type { Finding } from '../checks/report/finding';
import { inScriptOrder } from '../checks/report/order';
import type { Craft } from '../craft/craft';
import { faultyText } from './faulty-text';
import { overriddenText } from './overridden-text';

/** What is wrong with crafts, by one catalogue: their own findings, and those of the boards' texts that they include. */
export class CraftFindings {
  private readonly checker: Checker;
  /** By the stamp of the open script: each change gives it another. */
  private readonly kept = new WeakMap<object, readonly Finding[]>();

  constructor(
    private readonly catalog: Catalog,
    private readonly layer: (uri: string) => BoardLayer | undefined,
    onFault: OnFault | undefined,
  ) {
    this.checker = new Checker(catalog, onFault);
  }

  /** Computed when asked for and kept as long as the stamp is. */
  at(stamp: object, craft: Craft): readonly Finding[] {
    const kept = this.kept.get(stamp);
    if (kept !== undefined) return kept;
    const findings = this.of(craft);
    this.kept.set(stamp, findings);
    return findings;
  }

  of(craft: Craft): readonly Finding[] {
    const findings = this.checker.findings(craft);
    const text = craft.boardText();
    const layer = text === undefined ? undefined : this.layer(text.uri);
    const all =
      layer === undefined
        ? findings
        : [...findings, ...faultyText(craft, layer, findings), ...overriddenText(craft, layer)];
    return inScriptOrder(all.filter(({ check }) => !this.catalog.isSilent(check.id)));
  }
}
