// A run judges the change before it, not the luck of a draw: properties try the same examples each time. PROPSOFF_SEED
// with another number tries others, and `any` leaves it to chance.
const fc = require('fast-check');

const { PROPSOFF_SEED: asked = '271828' } = process.env;
if (asked !== 'any') fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(asked) });
