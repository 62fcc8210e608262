package quantity

// A Dimension names what a quantity measures, whatever its unit.
type Dimension int

// The dimensions that line and study files use.
const (
	Time                  Dimension = iota // 8 h
	Count                                  // 24 cartons
	Rate                                   // 1450 cartons/h; a bare 1450 /h is read too
	Ratio                                  // 0.4 %
	Length                                 // 6 in
	Area                                   // 16 cm2
	Volume                                 // 64 fl oz
	Angle                                  // 110 deg
	Mass                                   // 12 kg
	Temperature                            // 180 degC, a point on the scale
	TemperatureDifference                  // 5 K, a step on the scale
	Speed                                  // 250 mm/s
	Acceleration                           // 9.81 m/s2
	Jerk                                   // 4000 in/s3
	AngularSpeed                           // 3000 rpm
	AngularAcceleration                    // 200 deg/s2
	Diffusivity                            // 0.1 mm2/s; kinematic viscosity too
	Inertia                                // 0.002 kg m2
	Force                                  // 50 N
	Torque                                 // 1.2 N m
	Pressure                               // 4 bar
	Flow                                   // 900 mL/s
	VolumePerLength                        // 10 floz/in
	Conductance                            // 2000 W/m2K
	Conductivity                           // 0.18 W/mK
	Density                                // 930 kg/m3
	HeatCapacity                           // 1340 J/kgK
	Travel                                 // 1 in/rev
	PulsesPerTurn                          // 262144 pulses/rev
	Money                                  // 250000 money
	MoneyPerTime                           // 50000 money/year
	MoneyPerCount                          // 45 money/1000 cartons
)

// powers are the exponents of the base measures, in the order of the constants below.
type powers [7]int8

const (
	seconds = iota
	metres
	kilograms
	degrees
	kelvins
	each
	money
)

// measure says how a dimension is built and how an example of it is written.
type measure struct {
	name    string   // with its article, for messages: "a time"
	powers  powers   // exponents
	units   []string // units to offer where one is missing, the usual one first
	example string   // a complete example
}

func (d Dimension) measure() measure {
	if d < 0 || int(d) >= len(measures) {
		return measure{name: "another kind of quantity"}
	}
	return measures[d]
}

// String is the dimension's name with its article, such as "a time".
func (d Dimension) String() string { return d.measure().name }

// Example is a quantity of this dimension, as it is written in a file.
func (d Dimension) Example() string { return d.measure().example }

var measures = [...]measure{
	Time:                  {"a time", powers{seconds: 1}, []string{"s", "min", "h"}, "0.95 s"},
	Count:                 {"a count", powers{each: 1}, []string{"cartons"}, "24 cartons"},
	Rate:                  {"a rate", powers{each: 1, seconds: -1}, []string{"cartons/h"}, "1450 cartons/h"},
	Ratio:                 {"a share", powers{}, []string{"%"}, "0.4 %"},
	Length:                {"a length", powers{metres: 1}, []string{"mm", "in"}, "6 in"},
	Area:                  {"an area", powers{metres: 2}, []string{"mm2", "in2"}, "16 cm2"},
	Volume:                {"a volume", powers{metres: 3}, []string{"mL", "fl oz"}, "64 fl oz"},
	Angle:                 {"an angle", powers{degrees: 1}, []string{"deg"}, "110 deg"},
	Mass:                  {"a mass", powers{kilograms: 1}, []string{"kg", "lb"}, "12 kg"},
	Temperature:           {"a temperature", powers{kelvins: 1}, []string{"degC", "degF"}, "180 degC"},
	TemperatureDifference: {"a temperature difference", powers{kelvins: 1}, []string{"K"}, "5 K"},
	Speed:                 {"a speed", powers{metres: 1, seconds: -1}, []string{"mm/s", "in/s"}, "250 mm/s"},
	Acceleration:          {"an acceleration", powers{metres: 1, seconds: -2}, []string{"m/s2", "in/s2"}, "9.81 m/s2"},
	Jerk:                  {"a jerk", powers{metres: 1, seconds: -3}, []string{"m/s3", "in/s3"}, "100 m/s3"},
	AngularSpeed:          {"an angular speed", powers{degrees: 1, seconds: -1}, []string{"rpm", "deg/s"}, "3000 rpm"},
	AngularAcceleration:   {"an angular acceleration", powers{degrees: 1, seconds: -2}, []string{"deg/s2"}, "200 deg/s2"},
	Diffusivity:           {"a diffusivity", powers{metres: 2, seconds: -1}, []string{"mm2/s"}, "0.1 mm2/s"},
	Inertia:               {"a moment of inertia", powers{kilograms: 1, metres: 2}, []string{"kg m2"}, "0.002 kg m2"},
	Force:                 {"a force", powers{kilograms: 1, metres: 1, seconds: -2}, []string{"N"}, "50 N"},
	Torque:                {"a torque", powers{kilograms: 1, metres: 2, seconds: -2}, []string{"N m"}, "1.2 N m"},
	Pressure:              {"a pressure", powers{kilograms: 1, metres: -1, seconds: -2}, []string{"bar"}, "4 bar"},
	Flow:                  {"a flow", powers{metres: 3, seconds: -1}, []string{"mL/s"}, "900 mL/s"},
	VolumePerLength:       {"a volume per length", powers{metres: 2}, []string{"floz/in", "mL/mm"}, "10 floz/in"},
	Conductance:           {"a conductance", powers{kilograms: 1, seconds: -3, kelvins: -1}, []string{"W/m2K"}, "2000 W/m2K"},
	Conductivity:          {"a conductivity", powers{kilograms: 1, metres: 1, seconds: -3, kelvins: -1}, []string{"W/mK"}, "0.18 W/mK"},
	Density:               {"a density", powers{kilograms: 1, metres: -3}, []string{"kg/m3"}, "930 kg/m3"},
	HeatCapacity:          {"a specific heat", powers{metres: 2, seconds: -2, kelvins: -1}, []string{"J/kgK"}, "1340 J/kgK"},
	Travel:                {"a travel per turn", powers{metres: 1, degrees: -1}, []string{"in/rev", "mm/rev"}, "1 in/rev"},
	PulsesPerTurn:         {"a number of pulses per turn", powers{each: 1, degrees: -1}, []string{"pulses/rev"}, "262144 pulses/rev"},
	Money:                 {"a sum of money", powers{money: 1}, []string{"money"}, "250000 money"},
	MoneyPerTime:          {"a cost per time", powers{money: 1, seconds: -1}, []string{"money/year", "money/h"}, "50000 money/year"},
	MoneyPerCount:         {"a cost per carton", powers{money: 1, each: -1}, []string{"money/1000 cartons"}, "45 money/1000 cartons"},
}

// nameOf finds the dimension with these exponents, for messages.
func nameOf(p powers) string {
	for _, m := range measures {
		if m.powers.like(p) {
			return m.name
		}
	}
	return "another kind of quantity"
}
