package scenarios

// stopKeys are the keys of what goes wrong, and of what runs out.
var stopKeys = []keyGroup{
	{"miss", "miss", "A share alone is a chance with one try.", []lineKey{
		{"chance", "share", "required", "0 % to 99 %", "of a try to fail"},
		{"tries", `count|"unlimited"`, "1", "1 to 100", "tries in all; each takes the time of an act"},
		{"then", "then", "the act is missed", "", "the stop that follows when all tries fail; it is cleared, and the carton is good"},
		{"by_setting", "[row]", "the same at any setting", "", "factors of the chance"},
	}},
	{"chance", "reject", "", []lineKey{
		{"chance", "share", "required", "0 % to 100 %", "of a carton to be not good"},
		{"by_setting", "[row]", "the same at any setting", "", "factors of the chance"},
	}},
	{"then", "miss.then", "", []lineKey{
		{"cause", "text", "required", "", "what to call it"},
		{"clear", "drawn", "required", "mean up to 24 h", "time to clear, without the reaction of the crew"},
		{"scrap", "count", "0", "0 to 1000", "cartons lost: those in the station, then those behind"},
		{"attendant", "yes/no", "yes", "", "no for a stop that clears by itself"},
	}},
	{"stop", "stops", "Give every or chance. A quantity alone is an average: the stop comes by chance, as likely at any time. A law says how the " +
		"intervals are spread: {constant: 900 cartons} comes with every 900th.", []lineKey{
		{"cause", "text", "required", "no two alike", "what to call it"},
		{"every", "interval", "required, or chance", "a mean of 1 carton, or 0.1 s, or more", "how far apart stops are, in cartons handled or in time"},
		{"chance", "share", "every", "0 % to 100 %", "of a carton to bring the stop, in place of every"},
		{"clock", `"running"|"calendar"`, "running", "", "what a time counts: time in which the station works, or all time from one clearing to the next stop"},
		{"clear", "drawn", "required", "mean up to 24 h", "time to clear, without the reaction of the crew"},
		{"scrap", "count", "0", "0 to 1000", "cartons lost: those in the station, then those behind"},
		{"attendant", "yes/no", "yes", "", "no for a stop that clears by itself"},
		{"after", `"resume"|"repeat"|"again"`, "resume", "", "resume: the interrupted act goes on; repeat: it starts again and takes the time drawn before, so that one longer than a constant interval of stops never ends; again: it starts again with a time drawn anew. For a stop by running time"},
		{"by_setting", "[row]", "the same at any setting", "", "factors of the rate: 2 is twice as often"},
	}},
	{"row", "by_setting", "A table from setting to factor. Between its rows the factor lies on a straight line; beyond its ends it is that of the " +
		"nearest row. It needs a setting.", []lineKey{
		{"at", "rate", "required", "rising", "a setting"},
		{"factor", "number", "required", "0 to 1000", "the factor there"},
	}},
	{"material", "blanks, materials", "", []lineKey{
		{"name", "text", "required in materials", "no two alike", "what to call it; blanks have their name"},
		{"holds", "count", "required", "1 or more", "the full amount, with which a shift begins"},
		{"low", "count", "0", "below holds", "the amount at which a reload is called for"},
		{"reload", "count", "required", "1 or more", "what a reload brings; no more than fits"},
		{"takes", "drawn", "required", "mean up to 24 h", "time to reload, without the reaction of the crew; the station works on until it is out"},
		{"attendant", "yes/no", "yes", "", "no for a reload that comes by itself"},
	}},
	{"pallet", "pallet", "", []lineKey{
		{"every", "count", "required", "1 to 100000", "cartons on a pallet"},
		{"takes", "drawn", "required", "mean up to 24 h", "time to change it"},
		{"by", `"machine"|"attendant"`, "machine", "", "who changes it"},
		{"places", "count", "1", "1 to 100", "pallets side by side; with two, one is filled while the other is changed"},
	}},
}
