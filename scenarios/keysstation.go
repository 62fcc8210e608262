package scenarios

// stationKeys are the keys of conveyors and stations.
var stationKeys = []keyGroup{
	{"conveyor", "conveyor", "At the top of the file it is for every run of stations linked by pitches. The first station of such a run may " +
		"have a conveyor of its own instead; so may a station that stands on a conveyor alone. " +
		"Encoder, drive and acceleration need a pitch, and an index given as angles with its law.", []lineKey{
		{"pitch", "length", "unknown", "above 0, up to 5 m", "how far an index moves the cartons"},
		{"revolution", `time|share of pace|"pace"`, "no master", "10 ms to 10 min; 5 % to 100 % of pace", "one turn of the master, which drives the conveyor and the cams; " +
			"pace is the pace period of the setting"},
		{"index", "time|index", "required", "shorter than the revolution, up to 1 min", "the moving part of a cycle"},
		{"encoder", "pulses per turn", "none", "whole, 1 to 1000000000 pulses/rev", "of the master; timing then tells pulses per second and per degree"},
		{"drive", "drive", "no limit", "", "motor and gearing of the conveyor"},
		{"acceleration", "acceleration", "no limit", "above 0", "the highest that the cartons bear on the conveyor"},
		{"release", `"when clear"|"at cam zero"`, "when clear", "", "when the next cycle begins once all are clear: at once (the master turns on " +
			"demand), or at the next zero of a master that never stops"},
		{"run_out", "count", "1", "0 to 10000", "pitches behind the last station, if a buffer follows"},
		{"runs_empty", "yes/no", "no", "", "a conveyor fed from a buffer goes on with an empty pitch when no carton has come"},
	}},
	{"index", "conveyor.index", "An index as a share of the master's revolution.", []lineKey{
		{"from", "angle", "required", "0 deg to 360 deg", "where the index begins"},
		{"to", "angle", "required", "beyond from", "where it ends"},
		{"law", "motion law", "unknown", "", "how it moves"},
	}},
	{"station", "stations", "Keys that name a kind belong to stations of that kind only.", []lineKey{
		{"name", "text", "required", "no two alike", "what to call it"},
		{"kind", `"erect"|"fill"|"seal"|"offload"|"machine"`, "required", "", "what it does; offload must be the last, machine is anything else"},
		{"after", "after", "required, but for the first", "", "what links it to the station before; the first never lacks material"},
		{"conveyor", "conveyor", "the one at the top of the file", "", "the conveyor that begins at this station"},
		{"units", "count", "1", "1 to 100", "identical machines side by side; on a conveyor for offload only"},
		{"cams", "{axis}", "none", "up to 20", "axes that ride on the master, each under a name of yours. The erector's arm, and the filler's nozzle and piston, have to be called so " +
			"to be checked with the rest of their station. Needs an index given as angles"},
		{"bottom_seal", "drawn", "required, or cycle", "mean 0 s, or 1 ms to 10 min", "erect: time from the stand of the conveyor to clear"},
		{"turns", "count", "3 on a conveyor", "0 to 20", "erect: cycles from the pick to the drop; each turns the arm by 90 degrees if there are three"},
		{"drop", "drop", "not timed", "", "erect: how the carton falls from the arm onto the conveyor. Needs an index given as angles"},
		{"blanks", "material", "never run out", "", "erect: the magazine"},
		{"fill", "drawn", "the rest of the master's revolution", "mean 0 s, or 1 ms to 10 min", "fill: time from the stand of the conveyor to clear. " +
			"When left out, nozzle and piston ride on the master, on an empty pitch too"},
		{"dosing", "dosing", "unknown", "", "fill: how much is filled, and with what"},
		{"lag", "drawn", "0 s", "mean up to 10 s", "seal: from the stand of the conveyor until the photo-eye has seen the carton"},
		{"jaws", "jaws", "close and open say", "", "seal: how the jaws move; close and open then follow from it"},
		{"close", "drawn", "required for seal, or jaws", "mean 0 s, or 1 ms to 1 min", "seal: the jaws close"},
		{"dwell", `drawn|"derived"`, "required for seal", "mean 1 ms to 1 min", "seal: the jaws stay closed; derived takes what heat or glue need, and their margin"},
		{"open", "drawn", "required for seal, or jaws", "mean 0 s, or 1 ms to 1 min", "seal: the jaws open, as far as the carton needs to move on"},
		{"heat", "heat", "not looked at", "", "seal: what a heat seal needs; or glue"},
		{"glue", "glue", "not looked at", "", "seal: what a glue needs; or heat"},
		{"reject_by_margin", "[margin]", "no more rejects", "1 to 200 rows", "seal: the share of rejects by how much longer the dwell is than the seal needs; adds to reject. Needs heat or glue"},
		{"moves", "[robotmove]", "cycle", "1 to 60", "offload: the cycle as moves, one after the other"},
		{"cycle", "drawn", "required for offload, or moves; for machine, or steps", "mean 0 s, or 1 ms to 1 h (machine: 24 h)", "offload, machine: time per carton, or per pitch on a conveyor. In place of " +
			"bottom_seal or fill it is for erect and fill too"},
		{"steps", "[step]", "cycle", "", "machine: the cycle in parts"},
		{"away", "time", "the whole cycle", "up to the cycle", "offload, on a conveyor: when the gripper no longer holds up the conveyor"},
		{"acts_empty", "yes/no", "no", "", "on a conveyor: it moves on an empty pitch too"},
		{"miss", "share|miss", "0 %", "0 % to 99 %", "chance that an act fails: no carton is erected, or the carton is not good; an offload loses it"},
		{"reject", "share|chance", "0 %", "0 % to 100 %", "chance that an act leaves a carton that is not good"},
		{"ejects", "yes/no", "no", "", "cartons that are not good leave the line here"},
		{"stand_limit", "time", "for ever", "above 0, up to 24 h", "a carton that stands in the station for longer is scrapped"},
		{"stops", "[stop]", "none", "", "what makes it stand until it is cleared"},
		{"materials", "[material]", "none", "", "what runs down by one for each carton and is reloaded"},
		{"pallet", "pallet", "never full", "", "offload, machine: what the cartons go onto"},
	}},
	{"after", "after", "Give pitches or a buffer.", []lineKey{
		{"pitches", "count", "", "1 to 10000", "it stands so many pitches on, on the same conveyor"},
		{"buffer", `count|"unlimited"`, "", "0 to 1000000", "an accumulating conveyor with so many places; 0 hands over directly"},
		{"transit", "time", "0 s", "up to 24 h", "time through an empty buffer"},
	}},
	{"step", "steps", "", []lineKey{
		{"name", "text", "required", "no two alike", "what to call it"},
		{"takes", "drawn", "required", "mean 0 s, or 1 ms to 24 h", "how long it takes"},
	}},
}
