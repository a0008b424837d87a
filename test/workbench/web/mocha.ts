import 'mocha/mocha.js';

// The tests call `describe` as they are loaded, so this stands before them.
mocha.setup({ ui: 'bdd', reporter: 'base', timeout: 60_000, forbidOnly: true, forbidPending: true });
