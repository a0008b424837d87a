/**
 * What the released files are made of, as CycloneDX 1.5 (ECMA-424): npm lists all packages of the lock, of which only
 * those are left that are in a bundle.
 */

/** Of what npm lists: what is read here. */
export interface Sbom {
  readonly metadata: { readonly component: Component };
  readonly components: readonly Component[];
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn?: readonly string[] }[];
}

interface Component {
  readonly 'bom-ref': string;
  readonly name: string;
  readonly version: string;
}

/** The packages that a text of licences names, as name@version: "zod 4.6.7 (MIT)" below a rule. */
export function packagesIn(notices: string): readonly string[] {
  const heads = notices.matchAll(/^-{78}\n\n(\S+) (\S+) \(.+\)$/gm);
  return [...new Set([...heads].map(([, name = '', version = '']) => `${name}@${version}`))].sort();
}

/**
 * The same list with nothing in it that depends on the moment, the folder or the version of npm.
 * @throws {Error} for a package that is bundled and that the lock does not have.
 */
export function sbomOf(listed: Sbom, bundled: readonly string[], name: string, description: string): object {
  const components = listed.components.filter(({ name: of, version }) =>
    bundled.includes(`${of}@${version}`),
  );
  const known = new Set(components.map(({ name: of, version }) => `${of}@${version}`));
  const missing = bundled.find((one) => !known.has(one));
  if (missing !== undefined) throw new Error(`${missing} is bundled, and package-lock.json does not have it`);
  const root = listed.metadata.component;
  const refs = new Set([root['bom-ref'], ...components.map((one) => one['bom-ref'])]);
  const isLeft = (ref: string) => refs.has(ref);
  const { properties: _, scope: __, ...about } = root as Component & Record<string, unknown>;
  return {
    $schema: 'http://cyclonedx.org/schema/bom-1.5.schema.json',
    bomFormat: 'CycloneDX',
    specVersion: '1.5',
    version: 1,
    metadata: {
      lifecycles: [{ phase: 'build' }],
      component: { ...about, type: 'application', name, description },
    },
    components: components.map(shipped).sort(byRef),
    dependencies: listed.dependencies
      .filter(({ ref }) => isLeft(ref))
      .map(({ ref, dependsOn = [] }) => ({ ref, dependsOn: dependsOn.filter(isLeft).sort() }))
      .sort((one, other) => (one.ref < other.ref ? -1 : 1)),
  };
}

/** For npm all of them are for development alone, since nothing is installed beside what is bundled. */
function shipped(component: Component): Component {
  const { properties: _, ...about } = component as Component & Record<string, unknown>;
  return { ...about, scope: 'required' } as Component;
}

function byRef(one: Component, other: Component): number {
  return one['bom-ref'] < other['bom-ref'] ? -1 : 1;
}
