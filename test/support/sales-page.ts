/** A three-inch craft with three packs, as a sales page tells it: nothing of its receiver, switches or video. */
export const salesPage = `[craft]
name = "Threeinch"
layout = quad-x
mass = 138 g
motor-spacing = 140 mm

[motor]
kv = 3800 rpm/V
poles = 12
stator-diameter = 14 mm
stator-height = 8 mm

[prop]
diameter = 3 in
pitch = 3.2 in
blades = 3

[pack.two]
chemistry = lipo
cells = 2
capacity = 650 mAh
mass = 42 g
discharge = 75 C

[pack.three]
chemistry = lipo
cells = 3
capacity = 550 mAh
mass = 52 g
discharge = 75 C

[pack.four]
chemistry = lipo
cells = 4
capacity = 550 mAh
mass = 66 g
discharge = 75 C

[gyro]
rate = 8 kHz

[gyro.filter.1]
kind = first-order
cutoff = 150 Hz

[control]
rate = 8 kHz
`;
