import assert from 'node:assert/strict';
import {
  jsonOf,
  languagesOf,
  type Said,
  saidByClient,
  saidInOneLanguage,
  type Texts,
} from '../../support/localised';

/** Of package.json, the fields whose text a person reads; a name stays itself in every language. */
const fieldsForPeople = new Set([
  'title',
  'description',
  'markdownDescription',
  'enumDescriptions',
  'contextualTitle',
  'altText',
  'deprecationMessage',
]);

const names = new Set(['Propsoff']);

interface Field {
  readonly path: string;
  readonly text: string;
}

/** Every text in a JSON value with the path that leads to it. */
function textsIn(value: unknown, path = ''): readonly Field[] {
  if (typeof value === 'string') return [{ path, text: value }];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, one]) => textsIn(one, `${path}/${key}`));
}

/** Whether a person reads what stands at a path: `/contributes/commands/0/title`. */
function isForPeople(path: string): boolean {
  const keys = path.split('/').filter((key) => !/^\d+$/.test(key));
  return fieldsForPeople.has(keys.at(-1) ?? '') || /^\/contributes\/views\/[^/]+\/\d+\/name$/.test(path);
}

const keyOf = (text: string): string | null => /^%(.+)%$/.exec(text)?.[1] ?? null;

/** `{name}` of a text, sorted. */
const slots = (text: string): readonly string[] => (text.match(/\{\w+\}/g) ?? []).sort();

/** Where a link or a button of a walkthrough leads. */
const links = (text: string): readonly string[] =>
  [...text.matchAll(/\]\(([^)]*)\)/g)].map(([, to = '']) => to);

describe('the texts of package.json', () => {
  const fields = textsIn(jsonOf('package.json'));
  const english = jsonOf<Texts>('package.nls.json');
  const used = fields.flatMap(({ text }) => keyOf(text) ?? []);

  it('have a key wherever a person reads them', () => {
    const bare = fields.filter(
      ({ path, text }) => isForPeople(path) && keyOf(text) === null && !names.has(text),
    );
    assert.deepEqual(bare, []);
    assert.ok(used.length > 40, `${used.length} keys`);
  });

  it('are there for every key, and for none beside', () => {
    assert.deepEqual([...new Set(used)].sort(), Object.keys(english).sort());
  });

  for (const language of languagesOf('.', /^package\.nls\.(\w+)\.json$/)) {
    it(`are whole in ${language}: the same keys, links and commands`, () => {
      const texts = jsonOf<Texts>(`package.nls.${language}.json`);
      assert.deepEqual(Object.keys(texts), Object.keys(english));
      for (const [key, text] of Object.entries(texts)) {
        assert.deepEqual(links(text), links(english[key] ?? ''), key);
        if (key !== 'walkthrough.title') assert.notEqual(text, english[key], `${key} is English`);
      }
    });
  }
});

describe('what the client says', () => {
  const said = saidByClient();

  it('is plain text, which a bundle can hold', () => {
    assert.deepEqual(
      said.filter(({ text }) => text === null),
      [],
    );
    assert.ok(said.length > 100, `${said.length} texts`);
  });

  it('goes through the localisation without exception', () => {
    assert.deepEqual(saidInOneLanguage(), [] satisfies readonly Said[]);
  });

  for (const language of languagesOf('client/l10n', /^bundle\.l10n\.(\w+)\.json$/)) {
    it(`is whole in ${language}, with the same slots`, () => {
      const bundle = jsonOf<Texts>(`client/l10n/bundle.l10n.${language}.json`);
      assert.deepEqual(Object.keys(bundle).sort(), [...new Set(said.map(({ text }) => text ?? ''))].sort());
      for (const [text, there] of Object.entries(bundle)) assert.deepEqual(slots(there), slots(text), text);
    });
  }

  it('is there in the same languages as package.json', () => {
    assert.deepEqual(
      languagesOf('client/l10n', /^bundle\.l10n\.(\w+)\.json$/),
      languagesOf('.', /^package\.nls\.(\w+)\.json$/),
    );
    assert.ok(languagesOf('client/l10n', /^bundle\.l10n\.(\w+)\.json$/).includes('de'));
  });
});
