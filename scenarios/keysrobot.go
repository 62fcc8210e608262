package scenarios

// robotKeys are the keys of the moves of an offloading robot.
var robotKeys = []keyGroup{
	{"robotmove", "moves", "Give distance, turn or takes. A distance or a turn is a servo move with the limits beside it; takes is for what is no move, such as gripping.", []lineKey{
		{"name", "text", "required", "no two alike", "what to call it"},
		{"distance", "length", "turn or takes", "above 0, up to 100 m", "how far it moves along"},
		{"turn", "angle", "distance or takes", "above 0, up to 3600 deg", "how far it turns"},
		{"takes", "drawn", "distance or turn", "mean 0 s, or 1 ms to 1 h", "how long it takes"},
		{"speed", "speed|angular speed", "required, but with takes", "above 0", "the highest"},
		{"acceleration", "acceleration|angular acceleration", "required, but with takes", "above 0", "the highest, speeding up"},
		{"deceleration", "acceleration", "acceleration", "above 0; with jerk, the same as acceleration", "of a distance: the highest, slowing down"},
		{"jerk", "jerk", "no limit", "above 0", "of a distance: the highest; rounds the ramps of the speed"},
	}},
}
