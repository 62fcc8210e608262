// Package bottleneck names the station that limits a line, by rules that
// look only at when stations were active, or at how long they were blocked
// and starved.
//
// A station is active whenever it is neither starved nor blocked: working,
// stopped, reloading and waiting for a part of its own cycle all count.
// Stations are numbered from 0 in flow order. All rules are indicators and
// can be wrong: for exponential stations with means 1.2, 1, 1, 1 and buffers
// of one the arrow rule names the second, though the first limits the line.
package bottleneck
