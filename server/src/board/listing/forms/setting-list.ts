import type { ListedSetting, Stretch } from '../listing';
import type { ListingLine } from '../text/line';

/** Settings with the same groups: how many there are of each name. */
interface NamesOfGroup {
  readonly steps: readonly string[];
  readonly counts: Map<string, number>;
}

/** Settings in their order, each counted among those of the same name. */
export class SettingList {
  private readonly made: ListedSetting[] = [];
  private readonly groups = new Map<string, NamesOfGroup>();
  /** The groups of the last setting: most stand below others of theirs. */
  private last: NamesOfGroup | null = null;
  private continued: ListingLine[] = [];

  get settings(): readonly ListedSetting[] {
    this.finish();
    return this.made;
  }

  get size(): number {
    return this.made.length;
  }

  add(setting: Omit<ListedSetting, 'occurrence'>): void {
    this.finish();
    const group = this.groupOf(setting.groups);
    const occurrence = (group.counts.get(setting.name) ?? 0) + 1;
    group.counts.set(setting.name, occurrence);
    const { name, value, style, at, stated } = setting;
    this.made.push({ groups: group.steps, name, occurrence, value, style, at, stated });
  }

  private groupOf(steps: readonly string[]): NamesOfGroup {
    if (this.last?.steps === steps) return this.last;
    const key = JSON.stringify(steps);
    this.last = this.groups.get(key) ?? { steps, counts: new Map() };
    this.groups.set(key, this.last);
    return this.last;
  }

  /** A line that goes on with the value of the last setting; false where there is none. */
  goOn(line: ListingLine): boolean {
    if (this.made.length === 0) return false;
    this.continued.push(line);
    return true;
  }

  private finish(): void {
    const last = this.made.at(-1);
    const lines = this.continued;
    if (last === undefined || lines.length === 0) return;
    this.continued = [];
    const texts = lines.map(({ text }) => text.trim());
    const at: Stretch = { start: last.at.value.start, end: lines.at(-1)?.whole().end ?? last.at.value.end };
    const value = [last.value, ...texts].filter((text) => text !== '').join(' ');
    this.made[this.made.length - 1] = { ...last, value, at: { ...last.at, value: at } };
  }
}
