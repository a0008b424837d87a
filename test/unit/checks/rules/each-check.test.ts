import { checkCases } from '../../../support/all-check-cases';
import { holdChecks } from '../../../support/check-cases';

for (const group of checkCases) holdChecks(group);
