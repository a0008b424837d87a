import type { CodeRule } from '../../rule';
import { boardDescribedRules } from './board-described';
import { boardMountRules } from './board-mount';
import { boardPartRules } from './board-parts';
import { deviceSupplyRules } from './device-supply';
import { inertiaRules } from './inertia';
import { leadRules } from './leads';
import { portSpeedRules } from './port-speed';
import { fittingPortRules } from './ports-fit';
import { sharedPortRules } from './ports-shared';
import { railRules } from './rails';

/** Who is wired where, and does it fit? */
export const wireRules: readonly CodeRule[] = [
  ...sharedPortRules,
  ...fittingPortRules,
  ...portSpeedRules,
  ...deviceSupplyRules,
  ...railRules,
  ...leadRules,
  ...boardPartRules,
  ...boardDescribedRules,
  ...boardMountRules,
  ...inertiaRules,
];
