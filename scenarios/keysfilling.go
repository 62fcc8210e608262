package scenarios

// fillingKeys are the keys of the carton and its liquid, and of the dosing of a filler.
var fillingKeys = []keyGroup{
	{"carton", "carton", "Inside measures.", []lineKey{
		{"length", "length", "required", "above 0, up to 2 m", "along the conveyor"},
		{"width", "length", "required", "above 0, up to 2 m", "across the conveyor"},
		{"height", "length", "required", "above 0, up to 2 m", "from the bottom to the rim"},
		{"level", "length", "that of the dose", "above 0, below height", "of the liquid above the bottom, once it is filled"},
	}},
	{"liquid", "liquid", "How high it rises at the wall as the conveyor indexes. It needs the carton, and its level or a dose; and of the conveyor the pitch, and an index given as angles with its law.", []lineKey{
		{"damping", "share", "required", "0 % to 50 %", "of critical damping; 0.5 % to 2 % is usual for a thin liquid"},
		{"freeboard", "length", "from level to rim", "above 0, up to the rim", "how far it may rise before it is lost"},
		{"modes", "count", "5", "1 to 50", "odd wave modes that are counted"},
	}},
	{"dosing", "dosing", "It needs the carton.", []lineKey{
		{"dose", "volume", "required", "above 0, less than carton and cylinder hold", "filled into a carton, on average"},
		{"declared", "volume", "no figures on content", "above 0", "the content on the label"},
		{"spread", "volume", "0 mL", "0 or more", "standard deviation from dose to dose"},
		{"tolerable", "volume", "by OIML R 87 (2004)", "above 0", "by how much a carton may fall short of the declared content"},
		{"cylinder", "cylinder", "required", "", "the dosing cylinder"},
		{"nozzle_bore", "length", "unknown", "above 0, up to 1 m", "diameter of the nozzle's opening; gives the exit velocity"},
		{"splash", "speed", "no limit", "above 0", "highest exit velocity that does not splash; needs nozzle_bore"},
		{"valve_lag", "time", "0 s", "up to 10 s", "that the valve needs between the end of drawing and the start of dosing"},
		{"tip", "tip", "required with a nozzle in cams", "", "where the tip of the nozzle is"},
	}},
	{"cylinder", "dosing.cylinder", "Give bore or volume.", []lineKey{
		{"bore", "length", "volume", "above 0, up to 2 m", "inside diameter"},
		{"volume", "volume per length", "bore", "above 0", "per length of piston travel"},
		{"travel", "length", "no limit", "above 0, up to 5 m", "how far the piston can go"},
	}},
	{"tip", "dosing.tip", "", []lineKey{
		{"top", "length", "required", "above the carton's rim, up to 5 m", "of the tip above the carton's bottom, when the nozzle is home"},
		{"at_least", "length", "0 mm", "0 or more", "the tip stays so far above the rising level"},
		{"at_most", "length", "no limit", "at_least or more", "and no further from it while it doses"},
	}},
}
