// Package motion is the mechanics of an indexing carton line: motion laws, cams on one master, interlocks between
// axes, dosing, motor loads, slosh in an open carton, sealing heat, servo moves, and the highest setting each allows.
//
// Units. Lengths are metres, areas square metres, volumes cubic metres, masses kilograms, temperatures degrees
// Celsius. An axis travels in metres or, if it turns, in radians; its speeds, accelerations and jerks are per second
// to the first, second and third power. Angles of the master are Degrees. Kinematic formulas hold in any consistent
// unit of length.
//
// Lengths of time are Seconds (a float64) and not time.Duration, because whole nanoseconds are too coarse for exact
// closed forms and their roots; Seconds.Duration converts where a clock takes over.
//
// Nothing here is random and nothing reads files. All methods may be called by several goroutines at once.
package motion
