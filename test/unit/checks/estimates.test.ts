import { holdCases } from '../../support/check-cases';
import { estimateCases } from '../../support/estimate-cases';

describe('checks on what is estimated of the flight', () => holdCases(estimateCases));
