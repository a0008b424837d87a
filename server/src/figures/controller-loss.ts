import { eitherWay } from './uncertain';

/**
 * What speed controllers lose, as a share of the pack's voltage times the motors' current. F. Saemi and M. Benedict
 * (Texas A&M, 2024) have 6 % of the power at 60 % of throttle and 15 % at 40 %; bench tables of 2017 (MIT) have 10 to
 * 35 % at half throttle with the ripple's losses, and nothing that could be told at full throttle.
 */
export const controllerLoss = { likely: 0.025, ...eitherWay(2) };
