import type { Stretch } from '../listing';
import type { ListingLine } from '../text/line';
import { deepest, settingOf, settingOfElement, settingOfRecord, type Uncounted } from './document';
import type { DocumentRead } from './json';
import { roleOf } from './roles';
import { elementTokens, type Tag, type XmlToken } from './xml-tokens';

/** Whether a line begins a text of elements; a heading between angles does as well. */
export function isXmlAt(line: string): boolean {
  return /^<(?:[\p{L}_]|\?xml\b|!--)/u.test(line);
}

/** What a document of elements says; null where it is none: few elements end, or all are settings of one form. */
export function readXmlDocument(document: ListingLine, most: number): DocumentRead | null {
  return new ElementReader(document, most).read();
}

/** An element that is open. */
interface OpenElement {
  readonly tag: Tag;
  /** Its own groups, once another element stands in it. */
  readonly groups: readonly string[];
  text: Stretch | null;
  hasInner: boolean;
}

class ElementReader {
  private readonly settings: Uncounted[] = [];
  private readonly groups: { readonly groups: readonly string[]; readonly at: Stretch }[] = [];
  private readonly comments: Stretch[] = [];
  private readonly wrong: Stretch[] = [];
  private readonly open: OpenElement[] = [];
  /** Texts outside of all elements: wrong only where another element follows. */
  private readonly around: Stretch[] = [];
  private roots = 0;
  private ended = 0;
  private begun = 0;
  private end = 0;
  private isTooDeep = false;

  constructor(
    private readonly document: ListingLine,
    private readonly most: number,
  ) {}

  read(): DocumentRead | null {
    for (const token of elementTokens(this.document.text)) {
      this.take(token);
      if (this.isTooDeep || this.settings.length > this.most) break;
    }
    if (this.begun === 0 || this.ended < leastEnded * this.begun) return null;
    // One element around all others is no group of theirs.
    const isOuter = this.roots === 1 && this.groups.length > 0;
    const inner = (groups: readonly string[]) => (isOuter ? groups.slice(1) : groups);
    const { comments, wrong, end, isTooDeep } = this;
    return {
      settings: this.settings.map((setting) => ({ ...setting, groups: inner(setting.groups) })),
      groups: this.groups
        .map(({ groups, at }) => ({ groups: inner(groups), at }))
        .filter(({ groups }) => groups.length > 0),
      comments,
      wrong,
      end,
      isTooDeep,
      isClosed: this.open.length === 0,
    };
  }

  private take(token: XmlToken): void {
    if (token.kind === 'comment') this.comments.push(this.placeOf(token.at));
    else if (token.kind === 'text') this.takeText(token.at);
    else if (token.kind === 'open') this.begin(token.tag);
    else if (token.kind === 'close') this.close(token.name, token.at);
    if (token.kind !== 'text' || this.open.length > 0) this.end = token.at.end;
  }

  private placeOf({ start, end }: Stretch): Stretch {
    return this.document.at(start, end);
  }

  private takeText(at: Stretch): void {
    const top = this.open.at(-1);
    if (top === undefined) this.around.push(this.placeOf(at));
    else if (top.hasInner || top.text !== null) this.wrong.push(this.placeOf(at));
    else top.text = at;
  }

  private begin(tag: Tag): void {
    const top = this.open.at(-1);
    this.wrong.push(...this.around.splice(0));
    if (top === undefined) this.roots += 1;
    else if (!top.hasInner) this.becomeGroup(top);
    this.begun += 1;
    if (this.open.length >= deepest) {
      this.isTooDeep = true;
      return;
    }
    const outer = top?.groups ?? [];
    const element = { tag, groups: [...outer, ...stepsOf(tag)], text: null, hasInner: false };
    if (!tag.isEmpty) this.open.push(element);
    else {
      this.ended += 1;
      this.takeEmpty(element, outer);
    }
  }

  /** An element with others in it is a group; what its attributes say are settings of it. */
  private becomeGroup(element: OpenElement): void {
    const { tag, groups, text } = element;
    element.hasInner = true;
    if (text !== null) this.wrong.push(this.placeOf(text));
    this.groups.push({ groups, at: this.placeOf(tag.nameAt) });
    this.takeAttributes(element);
  }

  private takeAttributes({ tag, groups }: OpenElement): void {
    for (const entry of tag.attributes)
      if (roleOf(entry.name) !== 'name') this.settings.push(settingOf({ ...entry, groups }, this.document));
  }

  private takeEmpty(element: OpenElement, outer: readonly string[]): void {
    const { tag } = element;
    const record = settingOfRecord(outer, tag.attributes, this.document);
    if (record !== null) this.settings.push(record);
    else if (tag.attributes.some(({ name }) => roleOf(name) !== 'name')) {
      this.groups.push({ groups: element.groups, at: this.placeOf(tag.nameAt) });
      this.takeAttributes(element);
    } else this.wrong.push(this.placeOf(tag.nameAt));
  }

  private close(name: string, at: Stretch): void {
    const top = this.open.at(-1);
    if (top === undefined || top.tag.name !== name) {
      this.wrong.push(this.placeOf(at));
      return;
    }
    this.open.pop();
    this.ended += 1;
    if (top.hasInner) return;
    const outer = this.open.at(-1)?.groups ?? [];
    if (top.text === null && top.tag.attributes.length > 1) this.takeEmpty(top, outer);
    else {
      const valueAt = top.text ?? { start: top.tag.end, end: top.tag.end };
      this.settings.push(settingOfElement(outer, top.tag, valueAt, this.document));
    }
  }
}

/** Of the elements that begin, so many end: else they are headings, or marks in a text. */
const leastEnded = 0.9;

/** The groups that an element is: by its name, or what an attribute calls it. */
function stepsOf({ name, attributes }: Tag): readonly string[] {
  const called = attributes.find((entry) => roleOf(entry.name) === 'name')?.value ?? '';
  if (called === '') return [name];
  return roleOf(name) === 'group' ? [called] : [name, called];
}
