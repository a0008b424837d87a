/** What answers the requests of the table that are about recordings: one part of the bundle. */
export * from './measured-counts';
export * from './recording';
