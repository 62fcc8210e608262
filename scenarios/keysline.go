package scenarios

// wholeLineKeys are the keys at the top of a line file, and of its shift and crew.
var wholeLineKeys = []keyGroup{
	{"line", "The line", "", []lineKey{
		{"title", "text", "the name of the file", "any length", "what the line is, for headings"},
		{"setting", "rate", "the line runs as fast as it can", "above 0, up to 1000000 cartons/h", "the operator's speed setting; the pace period is 3600 s x lanes / setting"},
		{"lanes", "count", "1", "1 to 50", "cartons side by side on a pitch of a conveyor"},
		{"target", "cartons|rate", "none", "above 0", "wanted good cartons per shift, or a rate over the whole shift; the answer is the chance of making it"},
		{"shift", "shift", "8 h without planned stops", "", "the scheduled time"},
		{"run", "run", "shifts are simulated", "", "asks for long-run figures instead of shifts"},
		{"crew", "crew", "there is always one free, and at once", "", "who clears stops and reloads"},
		{"carton", "carton", "unknown", "", "the inside of the open carton; needed by dosing and by liquid"},
		{"liquid", "liquid", "not looked at", "", "what sloshes in the open carton between filler and sealer"},
		{"conveyor", "conveyor", "none", "", "the indexing conveyor of every run of stations that are linked by pitches"},
		{"stations", "[station]", "required", "1 to 200", "the stations in flow order"},
	}},
	{"shift", "shift", "A shift begins with an empty line. No station begins a cycle in a planned stop.", []lineKey{
		{"length", "time", "8 h", "above 0, up to 744 h", "scheduled time"},
		{"start_up", "time", "0 s", "within the shift", "planned stop at the start"},
		{"breaks", "[break]", "none", "", "planned stops in between; they may not overlap"},
		{"cleaning", "time", "0 s", "within the shift", "planned stop at the end"},
	}},
	{"break", "shift.breaks", "", []lineKey{
		{"name", "text", "break", "", "what to call it"},
		{"after", "time", "required", "within the shift", "its start, counted from the start of the shift"},
		{"length", "time", "required", "above 0", "how long it lasts"},
	}},
	{"run", "run", "One long run, cut into batches. The length of a shift, which may then have no planned stops, remains the unit of " +
		"figures per shift.", []lineKey{
		{"length", "time", "required", "above 0", "simulated time, warm-up included"},
		{"warm_up", `time|"auto"`, "auto", "shorter than the run", "left out of all figures; auto finds it (MSER-5, White 1997)"},
		{"batches", "count", "20", "2 to 1000", "batches that the intervals rest on"},
	}},
	{"crew", "crew", "First come, first served, for stops and reloads alike.", []lineKey{
		{"attendants", `count|"unlimited"`, "required", "1 to 1000", "how many there are"},
		{"reaction", "drawn", "0 s", "mean up to 8 h", "from being free and called to standing at the station"},
	}},
}
