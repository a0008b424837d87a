import type { CodeRule } from '../../rule';
import { overlayContentRules } from './overlay-content';
import { overlayPlaceRules } from './overlay-places';
import { powerStepRules } from './power-steps';
import { videoChannelRules } from './video-channel';
import { videoControlRules } from './video-control';
import { videoNeighbourRules } from './video-neighbours';
import { videoPolarisationRules } from './video-polarisation';
import { videoPowerRules } from './video-power';

/** Whether the pilot sees: overlay, channel, power, and those who fly at the same time. */
export const seeRules: readonly CodeRule[] = [
  ...overlayPlaceRules,
  ...overlayContentRules,
  ...videoChannelRules,
  ...videoPowerRules,
  ...powerStepRules,
  ...videoNeighbourRules,
  ...videoPolarisationRules,
  ...videoControlRules,
];
