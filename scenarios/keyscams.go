package scenarios

// camKeys are the keys of axes on the master: their moves, their drives, and what they keep clear of.
var camKeys = []keyGroup{
	{"cam", "cams, an axis", "Each axis is a map with these keys, or the list of its moves alone: " +
		"`cams: {plough: [{move: rise, ...}, {move: return, ...}]}`. Its moves are given as lengths if it moves along, as angles if it turns.", []lineKey{
		{"moves", "[move]", "required", "1 to 60", "what it does in a revolution of the master"},
		{"drive", "drive", "no limit", "", "motor and gearing of the axis"},
		{"acceleration", "acceleration|angular acceleration", "no limit", "above 0", "the highest that the axis may have"},
		{"clear", "[clear]", "none", "", "where it has to be out of the way, beyond what the tool checks by itself"},
	}},
	{"move", "cams.moves", "An axis either goes to and fro, by rises and returns that cancel, or feeds on by indexes. In the angles between its moves it stands. " +
		"Stands may be named as dwells; then all of them must be.", []lineKey{
		{"name", "text", "none", "", "what to call it"},
		{"move", `"rise"|"return"|"index"|"dwell"`, "required", "", "rise is away from home: the nozzle goes down, the piston draws. Return is back: the nozzle lifts, the piston doses"},
		{"from", "angle", "required", "0 deg to below 360 deg", "of the master, where it begins"},
		{"to", "angle", "required", "0 deg to 360 deg", "where it ends; less than from for a move through the zero of the master"},
		{"by", `length|angle|share of dose|"dose"`, "required, but for dwell", "above 0, up to 10 m or 3600 deg", "how far the axis goes. At the piston, dose is the stroke that the dose takes; a share of it is one of several shots. " +
			"Rises and returns may differ by a thousandth, which the returns make up"},
		{"law", "motion law", "required, but for dwell", "", "how it speeds up and slows down"},
	}},
	{"clear", "cams.clear", "Give below or above; and while, or from and to. A position counts from home, the lowest that a rising and returning axis has; of one that feeds, from the start of its first index.", []lineKey{
		{"below", "length|angle", "above", "0 or more", "the axis has to stay below this position"},
		{"above", "length|angle", "below", "0 or more", "the axis has to stay above this position"},
		{"while", `"conveyor moves"|"conveyor stands"`, "from and to", "", "when"},
		{"from", "angle", "while", "", "when, as angles of the master"},
		{"to", "angle", "while", "", "through the zero of the master if it is not beyond from"},
	}},
	{"drive", "conveyor.drive, cams.drive", "Shares of the ratings, at the peaks of the motion, limit the setting. The torque is that to accelerate motor and load; friction, " +
		"weight and process forces are not in it.", []lineKey{
		{"travel", "travel per turn|angle per turn", "required", "above 0", "of the axis per turn of the motor: a length if it moves along, an angle if it turns"},
		{"mass", "mass", "0 kg", "0 or more", "moved along by the axis"},
		{"moved_inertia", "inertia", "0 kg m2", "0 or more", "in place of mass for an axis that turns: of what turns with it"},
		{"inertia", "inertia", "0 kg m2", "0 or more", "of motor, coupling and gearing, at the motor"},
		{"rated_speed", "angular speed", "no limit", "above 0", "of the motor, the highest allowed"},
		{"rated_torque", "torque", "no limit", "above 0", "that the motor can keep up; compared with the root mean square"},
		{"peak_torque", "torque", "no limit", "rated_torque or more", "that the motor gives for short; compared with the peak"},
		{"encoder", "pulses per turn", "none", "whole, 1 to 1000000000 pulses/rev", "of the motor; timing then tells its pulses per second"},
	}},
	{"drop", "drop", "", []lineKey{
		{"at", "angle", "required", "0 deg to below 360 deg", "of the master, where the arm lets go"},
		{"height", "length", "required", "above 0, up to 5 m", "of the fall"},
		{"takes", "time", "that of a free fall", "above 0, up to 10 s", "measured, from letting go to the carton's stand"},
		{"free", "angle", "not checked", "above 0, up to 360 deg", "how far the arm may turn on until the carton has fallen. Needs cams with an arm that turns"},
	}},
}
