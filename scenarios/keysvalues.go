package scenarios

// keyValues says how each kind of value is written. Those of measures are examples, the usual one first.
var keyValues = map[string]string{
	"text":       "a name of up to 40 letters",
	"yes/no":     "yes or no",
	"number":     "a plain number",
	"count":      "24 cartons, or a plain 24",
	"rate":       "1450 cartons/h",
	"drawn":      "a time, or a law of times",
	"interval":   "900 cartons, 40 min, or a law of either",
	"share":      "0.4 %",
	"motion law": "modified sine, cycloidal, polynomial 3-4-5, trapezoidal velocity, ...; all of them below",
	"axis":       "a list of moves, or a map in which they stand under moves",

	"share of pace":        "80 % of pace",
	"share of dose":        "40 % of dose",
	"cartons":              "24 cartons",
	"time":                 "0.95 s, 20 ms, 15 min, 8 h",
	"length":               "6 in, 152 mm",
	"angle":                "110 deg",
	"volume":               "64 fl oz, 1 gal, 1000 mL",
	"volume per length":    "10 floz/in, 12 mL/mm",
	"mass":                 "12 kg, 25 lb",
	"inertia":              "0.002 kg m2",
	"torque":               "1.2 N m",
	"speed":                "0.6 m/s, 250 mm/s",
	"acceleration":         "6 m/s2",
	"jerk":                 "130 m/s3",
	"angular speed":        "180 deg/s, 3000 rpm",
	"angular acceleration": "600 deg/s2",
	"travel per turn":      "1 in/rev, 50 mm/rev",
	"angle per turn":       "36 deg/rev",
	"pulses per turn":      "262144 pulses/rev",
	"temperature":          "190 degC, 375 degF",
	"diffusivity":          "0.12 mm2/s",
	"conductance":          "2000 W/m2K",
	"conductivity":         "0.18 W/mK",
}

// measuredValues are the kinds of value that are a number with a unit; the editor only checks that there is one.
var measuredValues = []string{
	"share of pace", "share of dose", "cartons", "time", "length", "angle", "volume", "volume per length", "mass", "inertia", "torque", "speed", "acceleration", "jerk",
	"angular speed", "angular acceleration", "travel per turn", "angle per turn", "pulses per turn", "temperature", "diffusivity", "conductance", "conductivity",
}
