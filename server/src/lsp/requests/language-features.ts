/** What answers the requests of the table that are a `languageFeature`: one part of the bundle. */
export * from './board-actions';
export * from './code-action';
export * from './completion';
export * from './file-renames';
export * from './formatting';
export * from './hints';
export * from './hover';
export * from './navigation';
export * from './ranges';
export * from './semantic-tokens';
export * from './symbols';
