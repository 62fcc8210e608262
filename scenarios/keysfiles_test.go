package scenarios_test

// everyMotion uses each key of how a line moves that the example lines leave out. All data are invented.
const everyMotion = `
setting: 900 cartons/h
carton: {length: 95 mm, width: 95 mm, height: 240 mm, level: 200 mm}
liquid: {damping: 1 %, freeboard: 30 mm, modes: 3}
conveyor:
  pitch: 150 mm
  revolution: 75 % of pace
  index: {from: 10 deg, to: 100 deg, law: cycloidal}
  encoder: 4096 pulses/rev
  acceleration: {low: 3 m/s2, likely: 4 m/s2, source: guess}
  drive: {travel: 150 mm/rev, mass: 40 kg, inertia: 0.004 kg m2, rated_speed: 600 rpm, rated_torque: 4 N m, peak_torque: 11 N m, encoder: 1024 pulses/rev}
stations:
  - name: erector
    kind: erect
    bottom_seal: 0.5 s
    cams:
      arm:
        moves: [{move: index, by: 90 deg, from: 10 deg, to: 140 deg, law: cycloidal}]
        drive: {travel: 36 deg/rev, moved_inertia: 1.4 kg m2}
        acceleration: 4000 deg/s2
      plough:
        moves:
          - {name: out, move: rise, by: 40 mm, from: 120 deg, to: 200 deg, law: polynomial 3-4-5}
          - {name: wait, move: dwell, from: 200 deg, to: 210 deg}
          - {name: back, move: return, by: 40 mm, from: 210 deg, to: 290 deg, law: "modified sine, 20 % constant velocity"}
          - {move: dwell, from: 290 deg, to: 120 deg}
        acceleration: 20 m/s2
        clear: [{below: 1 mm, while: conveyor moves}, {above: 10 mm, from: 180 deg, to: 220 deg}]
    drop: {at: 300 deg, height: 50 mm, free: 5 deg, takes: 0.12 s}
  - name: filler
    kind: fill
    after: {pitches: 2}
    dosing: {dose: 1 L, declared: 0.99 L, spread: 6 mL, tolerable: 15 mL, cylinder: {bore: 100 mm, travel: 200 mm}, nozzle_bore: 50 mm, splash: 3 m/s, valve_lag: 10 ms}
  - name: sealer
    kind: seal
    after: {pitches: 2}
    jaws: {stroke: 80 mm, speed: 0.5 m/s, acceleration: 5 m/s2, deceleration: 4 m/s2, clear_at: 40 mm}
    dwell: derived
    heat: {board: 0.5 mm, diffusivity: 0.12 mm2/s, contact: 2000 W/m2K, conductivity: 0.15 W/mK, jaws: 180 degC, wanted: 230 degF, start: 20 degC, hot: both jaws, margin: 80 ms}
    reject_by_margin: [{margin: -0.1 s, reject: 40 %}, {margin: 0 s, reject: 4 %}, {margin: 0.1 s, reject: 2 %}]
  - name: robot
    kind: offload
    after: {buffer: 10 cartons}
    moves:
      - {name: over, distance: 1.0 m, speed: 2 m/s, acceleration: 8 m/s2, deceleration: 6 m/s2}
      - {name: down, distance: 0.3 m, speed: 1 m/s, acceleration: 8 m/s2, jerk: 100 m/s3}
      - {name: wrist, turn: 90 deg, speed: 180 deg/s, acceleration: 720 deg/s2}
      - {name: grip, takes: {uniform: {from: 0.2 s, to: 0.3 s}}}
`

// glued is a sealer that seals with glue.
const glued = `
stations:
  - {name: gun, kind: machine, cycle: 0.5 s, conveyor: {index: 0.5 s}}
  - {name: first, kind: seal, after: {pitches: 1}, close: 0.2 s, open: 0.2 s, dwell: derived, glue: {open: 6 s, set: 0.8 s, compression: 1 s, applied: 2 s, margin: 50 ms}}
  - {name: sealer, kind: seal, after: {pitches: 1}, close: 0.2 s, open: 0.2 s, dwell: 1 s, glue: {open: 6 s, set: 0.8 s, applied: {at: gun, then: scrap}}}
`
