/** What answers the requests of the table that are `onDemand`: one part of the bundle, loaded with the first. */
export * from './bench-card';
export * from './board';
export * from './compare';
export * from './flight';
export * from './meanings';
export * from './new-board-text';
export * from './sheet';
export * from './teach';
