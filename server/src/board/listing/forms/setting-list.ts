import type { ListedSetting, Stretch } from '../listing';
import type { Line } from '../text/line';

/** Settings in their order, each counted among those of the same name. */
export class SettingList {
  private readonly made: ListedSetting[] = [];
  private readonly counts = new Map<string, number>();
  private continued: Line[] = [];

  get settings(): readonly ListedSetting[] {
    this.finish();
    return this.made;
  }

  get size(): number {
    return this.made.length;
  }

  add(setting: Omit<ListedSetting, 'occurrence'>): void {
    this.finish();
    const key = JSON.stringify([...setting.groups, setting.name]);
    const occurrence = (this.counts.get(key) ?? 0) + 1;
    this.counts.set(key, occurrence);
    this.made.push({ ...setting, occurrence });
  }

  /** A line that goes on with the value of the last setting; false where there is none. */
  goOn(line: Line): boolean {
    if (this.made.length === 0) return false;
    this.continued.push(line);
    return true;
  }

  private finish(): void {
    const last = this.made.at(-1);
    const [first, ...more] = this.continued;
    this.continued = [];
    if (last === undefined || first === undefined) return;
    const lines = [first, ...more];
    const texts = lines.map(({ text }) => text.trim());
    const at: Stretch = { start: last.at.value.start, end: lines.at(-1)?.whole().end ?? last.at.value.end };
    const value = [last.value, ...texts].filter((text) => text !== '').join(' ');
    this.made[this.made.length - 1] = { ...last, value, at: { ...last.at, value: at } };
  }
}
