/** The names that every script may count on, group by group; `a/b` stands for both. */
const core = `
craft: name purpose mass payload layout motor-spacing drag-area inertia.roll/pitch/yaw ceiling field-elevation air-temperature
board: profile mount-roll mount-pitch mount-yaw supply.five-volt-limit supply.three-volt-limit barometer compass
wire.<device>: gauge length supply current
motor: kv poles resistance idle-current idle-current-voltage current-limit cells-limit spin order idle output-limit temperature-limit
esc: signal update-rate speed-feedback current-limit cells-limit spin telemetry-port beep-strength minimum-pulse maximum-pulse
prop: diameter pitch blades thrust-coefficient power-coefficient data
pack.<name>: chemistry cells parallel capacity discharge mass resistance full-cell note
power: measure divider-upper divider-lower reference-voltage current-scale current-offset warn-cell land-cell charge-reserve used-warning alarm alarm-delay cells even-thrust
receiver: link port supply inverted order channels frame-interval low centre high deadband smoothing strength-channel
signal-loss: hold action throttle duration regain-hold switch-channel
switch.<function>: channel on joined-with
stick: roll.curve/deadband/limit pitch.curve/deadband/limit yaw.curve/deadband/limit throttle.curve/deadband/limit throttle.hover-point
level: tilt-limit strength blend-from turn-coordination
gyro: rate full-scale chain filter.<number>.kind/cutoff/centre/width/tones/count/from/to/interval
derivative: chain input limit filter.<number>.kind/cutoff/centre/width/tones/count/from/to/interval
control: rate roll.proportional/integral/derivative/feedforward pitch.proportional/integral/derivative/feedforward yaw.proportional/integral/derivative/feedforward roll.limit pitch.limit yaw.limit integral-limit feedforward-cutoff when.<situation>.proportional when.<situation>.integral when.<situation>.derivative when.zero-throttle.from/keep-steering when.throttle-jumps.from when.high-throttle.from when.fast-turn.from when.motors-short.gives-way
arming: tilt-limit throttle-limit delay needs disarm-when-idle beep
recovery: after-impact impact-threshold steady-limit righting-throttle locate-after
video: standard band channel frequency power waiting-power control control-port supply antenna-gain receiver-antenna-gain receiver-sensitivity plans
overlay.<element>: place shown-in alarm
telemetry: link port inverted interval sensors
find: device on pattern
record: medium rate size fields start
position: port protocol speed fix-minimum home-is height-from
radio-club: other.<pilot>.frequency/power
rules: region licence club-power-limit
flight.<name>: date pack packs-flown minutes motor-temperature air-temperature note
`;

export const coreNames: readonly string[] = core
  .trim()
  .split('\n')
  .flatMap((line) => {
    const [section = '', rest = ''] = line.split(': ');
    return rest.split(' ').flatMap((words) => {
      const at = words.lastIndexOf('.') + 1;
      return words
        .slice(at)
        .split('/')
        .map((last) => `${section}.${words.slice(0, at)}${last}`);
    });
  });
