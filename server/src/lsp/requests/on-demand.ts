/** What answers the requests of the table that are `onDemand`: one part of the bundle. */
export * from './bench-card';
export * from './board';
export * from './compare';
export * from './find';
export * from './flight';
export * from './keep';
export * from './meanings';
export * from './new-board-text';
export * from './sales-page';
export * from './sheet';
export * from './teach';
