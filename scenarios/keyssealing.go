package scenarios

// sealingKeys are the keys of jaws, and of what a seal needs.
var sealingKeys = []keyGroup{
	{"jaws", "jaws", "A servo move on the sealer's own time, the same to close and to open. A close or open that is given stands all the same.",
		[]lineKey{
			{"stroke", "length", "required", "above 0, up to 5 m", "from open to closed"},
			{"speed", "speed", "required", "above 0", "the highest"},
			{"acceleration", "acceleration", "required", "above 0", "the highest, speeding up"},
			{"deceleration", "acceleration", "acceleration", "above 0; with jerk, the same as acceleration", "the highest, slowing down"},
			{"jerk", "jerk", "no limit", "above 0", "the highest; rounds the ramps of the speed"},
			{"clear_at", "length", "stroke", "above 0, up to stroke", "the opening from which the carton may move on"},
		}},
	{"heat", "heat", "Two boards between hot jaws: how long until it is as hot as wanted where they meet. It gives the least dwell.", []lineKey{
		{"board", "length", "required", "above 0, up to 20 mm", "thickness of one board"},
		{"diffusivity", "diffusivity", "required", "above 0", "of the board, for heat"},
		{"jaws", "temperature", "required", "", "of the jaws"},
		{"wanted", "temperature", "required", "between start and jaws", "where the boards meet"},
		{"start", "temperature", "20 degC", "", "of the boards when the jaws close"},
		{"hot", `"both jaws"|"one jaw"`, "both jaws", "", "with one, the other is taken as insulating"},
		{"contact", "conductance", "perfect contact", "above 0", "between jaw and board; needs conductivity"},
		{"conductivity", "conductivity", "not needed", "above 0", "of the board, for heat; with contact only"},
		{"margin", "time", "0 s", "up to 1 min", "by how much a derived dwell is longer than the least"},
	}},
	{"glue", "glue", "Times of the glue's maker, in the terms of ASTM D4497. The least dwell is set, or compression if that is longer.", []lineKey{
		{"open", "time", "required", "above 0, up to 1 h", "open time: how long after it was applied it still wets the other face"},
		{"set", "time", "required", "above 0, up to 1 h", "set time: how long it must be pressed until it holds"},
		{"compression", "time", "set", "set to 1 h", "how long the jaws press, where that is asked for"},
		{"applied", "time|applied", "not checked", "above 0, up to open", "how long before the jaws close the glue was applied, or by which station"},
		{"margin", "time", "0 s", "up to 1 min", "by how much a derived dwell is longer than the least"},
	}},
	{"applied", "glue.applied", "The time from where the conveyor comes to a stand at that station, over the cycles in between, to where the jaws are closed is a limit: " +
		"it forbids slow settings. Whatever stands the line for longer costs the cartons between the two.", []lineKey{
		{"at", "text", "required", "on the same conveyor, before the sealer or the sealer itself", "the station that lays the glue"},
		{"then", `"reject"|"scrap"`, "reject", "", "what becomes of a carton that is closed after the open time: made but not good, or taken off the line"},
	}},
	{"margin", "reject_by_margin", "A table from margin to share of rejects. Between its rows the share lies on a straight line; beyond its ends it is that of the nearest row. " +
		"It holds for each carton by its own dwell: where the dwell is drawn, the share is the mean over its law. Beside it the seal's need is a limit: no more than one " +
		"act in a thousand may have a dwell below the least. Without the table a seal that is too short is no reject, since that limit refuses the line.", []lineKey{
		{"margin", "time", "required", "-60 s to 60 s, rising", "the dwell of a carton less the least dwell; negative where it is too short"},
		{"reject", "share", "required", "0 % to 100 %", "the share of rejects there"},
	}},
}
