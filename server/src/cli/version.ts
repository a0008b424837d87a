/** That of the package, put in by the build. */
declare const PROPSOFF_VERSION: string;

/** `0.1.0`; where the code runs without having been built, as in its own tests, there is none to tell. */
export const versionText: string = typeof PROPSOFF_VERSION === 'string' ? PROPSOFF_VERSION : '0.0.0';
