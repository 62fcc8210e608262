package quantity_test

import (
	"testing"
	"time"

	"dwellcast/scenarios/quantity"
)

// TestSI compares units with the handbooks' factors.
func TestSI(t *testing.T) {
	const (
		sp811    = "NIST SP 811 (2008) App. B, from memory"
		hb44     = "NIST Handbook 44 App. C: 1 US gal = 231 in3 = 128 fl oz"
		metric   = "SI prefixes"
		plane    = "1 revolution = 360 deg = 2 pi rad"
		currency = "definition of this package"
	)
	tests := []struct {
		text   string
		want   float64
		source string
	}{
		{"1 in", 0.0254, sp811},
		{"1 ft", 0.3048, sp811},
		{"1 lb", 0.45359237, sp811},
		{"1 oz", 0.028349523125, sp811},
		{"1 gal", 3.785411784e-3, sp811},
		{"1 fl oz", 2.95735295625e-5, sp811},
		{"1 day", 86400, sp811},
		{"1 year", 3.1536e7, sp811},
		{"1 bar", 1e5, sp811},
		{"212 degF", 373.15, sp811},
		{"180 degC", 453.15, sp811},
		{"5 K", 5, sp811},
		{"1 rpm", 0.10471975511965977, sp811 + " gives 1.047198e-1"},
		{"128 floz", 231 * 0.0254 * 0.0254 * 0.0254, hb44},
		{"231 in3", 3.785411784e-3, hb44},
		{"10 floz/in", 10 * 231.0 / 128 * 0.0254 * 0.0254, hb44},
		{"64 fl oz", 1.892705892e-3, hb44},
		{"120 mm", 0.12, metric},
		{"9.81 m/s2", 9.81, metric},
		{"0.1 mm2/s", 1e-7, metric},
		{"0.002 kg m2", 0.002, metric},
		{"1.2 N m", 1.2, metric},
		{"1.2 Nm", 1.2, metric},
		{"250 mm/s", 0.25, metric},
		{"250 mm/s2", 0.25, metric},
		{"5 mL", 5e-6, metric},
		{"5 cm3", 5e-6, metric},
		{"2 L", 2e-3, metric},
		{"18 mL/mm", 0.018, metric},
		{"2000 W/m2K", 2000, metric},
		{"2000 W/(m2 K)", 2000, metric},
		{"2000 W/m²·K", 2000, metric},
		{"0.18 W/mK", 0.18, metric},
		{"1340 J/kgK", 1340, metric},
		{"930 kg/m3", 930, metric},
		{"4 kPa", 4000, metric},
		{"110 deg", 1.9198621771937625, plane},
		{"180°", 3.141592653589793, plane},
		{"2 rad", 2, plane},
		{"360 deg/s", 6.283185307179586, plane},
		{"1 in/rev", 0.0254 / 6.283185307179586, plane},
		{"262144 pulses/rev", 262144 / 6.283185307179586, plane},
		{"3600 cartons/h", 1, metric},
		{"60 pieces/min", 1, metric},
		{"7200 /h", 2, metric},
		{"0.4 %", 0.004, metric},
		{"0.004 fraction", 0.004, metric},
		{"45 money/1000 cartons", 0.045, currency},
		{"45 money per 1000 cartons", 0.045, currency},
		{"3600 money/h", 1, currency},
	}
	for _, tt := range tests {
		q, err := quantity.Parse(tt.text)
		if err != nil {
			t.Errorf("Parse(%q): %v", tt.text, err)
			continue
		}
		if got := q.SI(); !near(got, tt.want) {
			t.Errorf("%s is %.17g in SI, want %.17g (%s)", tt.text, got, tt.want, tt.source)
		}
	}
}

// near allows for the rounding of the expected value itself.
func near(got, want float64) bool {
	difference := got - want
	return difference <= 4e-16*want && -difference <= 4e-16*want
}

func TestDuration(t *testing.T) {
	tests := map[string]time.Duration{
		"8 h":             8 * time.Hour,
		"15 min":          15 * time.Minute,
		"1.1s":            1100 * time.Millisecond,
		".95 s":           950 * time.Millisecond,
		"0.1 s":           100 * time.Millisecond, // 0.1 has no exact float64
		"20 ms":           20 * time.Millisecond,
		"7 us":            7 * time.Microsecond,
		"7 µs":            7 * time.Microsecond,
		"3 ns":            3,
		"0.4 ns":          0,
		"0.5 ns":          1, // halves away from zero
		"-0.5 ns":         -1,
		"-2 s":            -2 * time.Second,
		"1e3 s":           1000 * time.Second,
		"0.0000000015 s":  2,
		"1 week":          168 * time.Hour,
		"9223372036.8 s":  9223372036800000000,
		"1\u00a0450.5 ms": 0, // a blank in the number: refused
	}
	for text, want := range tests {
		q, err := quantity.Parse(text)
		var got time.Duration
		if err == nil {
			got, err = q.Duration()
		}
		if (err != nil) != (text == "1\u00a0450.5 ms") || got != want {
			t.Errorf("%q is %v, %v; want %v", text, got, err, want)
		}
	}
}

func TestPeriod(t *testing.T) {
	// 3600 s / 1450 = 2.48275862068... s, by long division.
	q := parse(t, "1450 cartons/h")
	if got, err := q.Period(); got != 2482758621 || err != nil {
		t.Errorf("period of %s is %d ns, %v; want 2482758621", q, got, err)
	}
	if _, err := parse(t, "0 cartons/h").Period(); err == nil {
		t.Error("a rate of 0 has a period")
	}
}

func TestReadings(t *testing.T) {
	if got, err := parse(t, "24.5 cartons/min").PerHour(); got != 1470 || err != nil {
		t.Errorf("PerHour %v, %v; want 1470", got, err)
	}
	if got, err := parse(t, "0.4 %").Ratio(); got != 0.004 || err != nil {
		t.Errorf("Ratio %v, %v; want 0.004", got, err)
	}
	if got, err := parse(t, "500 pieces").Count(); got != 500 || err != nil {
		t.Errorf("Count %v, %v; want 500", got, err)
	}
	if got, err := parse(t, "18 degF").Difference(); got != 10 || err != nil {
		t.Errorf("Difference %v, %v; want 10 (1 K = 1.8 degF, NIST SP 811)", got, err)
	}
	if got, err := parse(t, "1 US gal").In("fl oz"); got != 128 || err != nil {
		t.Errorf("In fl oz %v, %v; want 128 (NIST Handbook 44)", got, err)
	}
	if got, err := parse(t, "1 gal").In("in3"); got != 231 || err != nil {
		t.Errorf("In in3 %v, %v; want 231 (NIST Handbook 44)", got, err)
	}
	if got, err := parse(t, "68 degF").In("degC"); got != 20 || err != nil {
		t.Errorf("In degC %v, %v; want 20 (NIST SP 811)", got, err)
	}
	if !parse(t, "60 min").Equal(parse(t, "1 h")) || parse(t, "1 h").Equal(parse(t, "1 %")) {
		t.Error("Equal compares sizes of one dimension")
	}
}

func TestSpaced(t *testing.T) {
	values, err := quantity.Spaced(parse(t, "0.6 s"), parse(t, "1600 ms"), 11)
	if err != nil || len(values) != 11 {
		t.Fatalf("%d values, %v", len(values), err)
	}
	for i, want := range []string{"0.6 s", "0.7 s", "0.8 s", "0.9 s", "1 s", "1.1 s", "1.2 s", "1.3 s", "1.4 s", "1.5 s", "1.6 s"} {
		if values[i].String() != want {
			t.Errorf("value %d is %s, want %s", i, values[i], want)
		}
	}
	if _, err := quantity.Spaced(parse(t, "0.6 s"), parse(t, "2 %"), 11); err == nil {
		t.Error("a range from seconds to percent is accepted")
	}
}

func TestOf(t *testing.T) {
	q, err := quantity.Of(0.95, "s")
	if err != nil || q.String() != "0.95 s" {
		t.Errorf("Of(0.95, s) is %q, %v", q, err)
	}
	if _, err := quantity.Of(1, "sx"); err == nil {
		t.Error("Of takes an unknown unit")
	}
}

func TestFormat(t *testing.T) {
	tests := map[time.Duration]string{
		0:                       "0 s",
		950 * time.Millisecond:  "0.95 s",
		25 * time.Second:        "25 s",
		4 * time.Minute:         "4 min",
		90 * time.Minute:        "90 min",
		8 * time.Hour:           "8 h",
		20 * time.Millisecond:   "20 ms",
		2482758621:              "2.482758621 s",
		1500 * time.Microsecond: "1.5 ms",
		7:                       "7 ns",
		-3 * time.Second:        "-3 s",
		61 * time.Second:        "61 s",
	}
	for d, want := range tests {
		if got := quantity.FormatDuration(d); got != want {
			t.Errorf("FormatDuration(%d) is %q, want %q", d, got, want)
		}
	}
	for got, want := range map[string]string{
		quantity.FormatRate(1450):            "1450 cartons/h",
		quantity.FormatRate(1690.1408):       "1690.1 cartons/h",
		quantity.FormatRatio(0.004):          "0.4 %",
		quantity.FormatCount(1, "carton"):    "1 carton",
		quantity.FormatCount(24, "carton"):   "24 cartons",
		quantity.FormatRatio(1.0 / 3):        "33.3333 %",
		quantity.FormatRate(-0.01):           "0 cartons/h",
		quantity.FormatCount(0, "attendant"): "0 attendants",
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func parse(t *testing.T, text string) quantity.Quantity {
	t.Helper()
	q, err := quantity.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return q
}
