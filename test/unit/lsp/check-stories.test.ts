import { strict as assert } from 'node:assert';
import { CheckStories } from '../../../server/src/lsp/convert/check-stories';
import { testCatalog as catalog } from '../../support/catalog';

const noOwn = { checked: false, files: false, commands: false };
const page = () => 'file:///opt/propsoff/CHECKS.md';
const shipped = new Set(catalog.checks.keys());

describe('where the story of a check can be read', () => {
  it('is a place on the page that ships, for an editor that follows links', () => {
    const stories = new CheckStories({ linksOfFindings: true, own: noOwn }, shipped, page);
    assert.equal(stories.of('wire/port-shared', catalog), `${page()}#wire/port-shared`);
    assert.equal(stories.of('club/of-ours', catalog), null);
    const replacement = { what: 'check', name: 'wire/port-shared', file: 'propsoff/club.json', levels: null };
    const replaced = { check: catalog.check.bind(catalog), replacements: [replacement] };
    assert.equal(stories.of('wire/port-shared', replaced), null);
  });

  it('is nowhere for an editor that follows none, and where no page ships', () => {
    const unable = new CheckStories({ linksOfFindings: false, own: noOwn }, shipped, page);
    assert.equal(unable.of('wire/port-shared', catalog), null);
    const pageless = new CheckStories({ linksOfFindings: true, own: noOwn }, shipped, () => null);
    assert.equal(pageless.of('wire/port-shared', catalog), null);
  });

  it('is a page that our editor opens, also of a check of the workspace', () => {
    const own = { ...noOwn, commands: true };
    const stories = new CheckStories({ linksOfFindings: true, own }, new Set<string>(), () => null);
    assert.equal(
      stories.of('wire/port-shared', catalog),
      'command:propsoff.explainCheck?%5B%22wire%2Fport-shared%22%5D',
    );
    assert.equal(stories.of('club/of-ours', catalog), null);
  });
});
