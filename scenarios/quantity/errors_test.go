package quantity_test

import (
	"errors"
	"testing"

	"dwellcast/scenarios/quantity"
)

// TestMessages holds the text of every complaint.
func TestMessages(t *testing.T) {
	tests := []struct {
		text string
		as   quantity.Dimension
		kind quantity.Kind
		want string
	}{
		{"8", quantity.Time, quantity.MissingUnit, `"8" has no unit; write 8 s, 8 min or 8 h`},
		{"1450", quantity.Rate, quantity.MissingUnit, `"1450" has no unit; write 1450 cartons/h`},
		{"0.004", quantity.Ratio, quantity.MissingUnit, `"0.004" has no unit; write 0.004 %`},
		{"8 H", quantity.Time, quantity.UnknownUnit, `"8 H" has an unknown unit; write 8 h`},
		{"8 hous", quantity.Time, quantity.UnknownUnit, `"8 hous" has an unknown unit; write 8 hour`},
		{"1450 cartns/h", quantity.Rate, quantity.UnknownUnit, `"1450 cartns/h" has an unknown unit; write 1450 cartons/h`},
		{"3 parsecs/h", quantity.Rate, quantity.UnknownUnit, `"3 parsecs/h" has an unknown unit; write a unit such as s, min, h, cartons, cartons/h, %, mm, in or deg`},
		{"3 furlong", quantity.Length, quantity.UnknownUnit, `"3 furlong" has an unknown unit; write a unit such as s, min, h, cartons, cartons/h, %, mm, in or deg`},
		{"8 h", quantity.Rate, quantity.WrongDimension, `"8 h" is a time where a rate is wanted; write for example 1450 cartons/h`},
		{"1450 cartons/h", quantity.Time, quantity.WrongDimension, `"1450 cartons/h" is a rate where a time is wanted; write for example 0.95 s`},
		{"5 /h", quantity.Time, quantity.WrongDimension, `"5 /h" is a rate where a time is wanted; write for example 0.95 s`},
		{"5 kg s", quantity.Time, quantity.WrongDimension, `"5 kg s" is another kind of quantity where a time is wanted; write for example 0.95 s`},
		{"", quantity.Time, quantity.BadNumber, `"" is empty; write a number and its unit, as in 0.95 s or 1450 cartons/h`},
		{"fast", quantity.Time, quantity.BadNumber, `"fast" does not start with a number; write a number and its unit, as in 0.95 s or 1450 cartons/h`},
		{"- 5 s", quantity.Time, quantity.BadNumber, `"- 5 s" does not start with a number; write a number and its unit, as in 0.95 s or 1450 cartons/h`},
		{"NaN s", quantity.Time, quantity.BadNumber, `"NaN s" is not a finite number; write a number and its unit, as in 0.95 s or 1450 cartons/h`},
		{"-.inf", quantity.Time, quantity.BadNumber, `"-.inf" is not a finite number; write a number and its unit, as in 0.95 s or 1450 cartons/h`},
		{"+Infinity h", quantity.Time, quantity.BadNumber, `"+Infinity h" is not a finite number; write a number and its unit, as in 0.95 s or 1450 cartons/h`},
		{"0x1F s", quantity.Time, quantity.BadNumber, `"0x1F s" is a hexadecimal number; write it in decimal digits`},
		{"1_000 s", quantity.Time, quantity.BadNumber, `"1_000 s" has an underscore in the number; write 1000 s`},
		{"1,5 s", quantity.Time, quantity.BadNumber, `"1,5 s" has a comma in the number; write 1.5 s`},
		{"1,450 cartons/h", quantity.Rate, quantity.BadNumber, `"1,450 cartons/h" has a comma in the number; write 1450 cartons/h, or 1.450 cartons/h if the comma is a decimal one`},
		{"1,234,567 cartons", quantity.Count, quantity.BadNumber, `"1,234,567 cartons" has a comma in the number; write 1234567 cartons`},
		{"1 450 cartons/h", quantity.Rate, quantity.BadNumber, `"1 450 cartons/h" has a blank in the number; write 1450 cartons/h`},
		{"1.2.3 s", quantity.Time, quantity.BadNumber, `"1.2.3 s" has a point out of place; write a number and its unit, as in 0.95 s or 1450 cartons/h`},
		{"5. s", quantity.Time, quantity.BadNumber, `"5. s" has a point out of place; write a number and its unit, as in 0.95 s or 1450 cartons/h`},
		{"1e400 s", quantity.Time, quantity.BadNumber, `"1e400 s" has a power of ten out of range; write a number such as 6e6`},
		{"1e99999999999999999999 s", quantity.Time, quantity.BadNumber, `"1e99999999999999999999 s" has a power of ten out of range; write a number such as 6e6`},
		{"0.12345678901234567890123456 s", quantity.Time, quantity.BadNumber, `"0.12345678901234567890123456 s" has too many digits; round it to what can be measured`},
		{"1/4 in", quantity.Length, quantity.UnknownUnit, `"1/4 in" is a fraction; write a decimal number, as in 0.25 in`},
		{"5 cartons/", quantity.Rate, quantity.UnknownUnit, `"5 cartons/" has nothing below the slash; write a unit such as cartons/h`},
		{"5 money/0 cartons", quantity.MoneyPerCount, quantity.UnknownUnit, `"5 money/0 cartons" divides by zero; write a unit such as money/1000 cartons`},
		{"5 s 7", quantity.Time, quantity.UnknownUnit, `"5 s 7" is not a unit; write the number, a blank and the unit, as in 1.5 s or 1450 cartons/h`},
		{"5 m9", quantity.Length, quantity.UnknownUnit, `"5 m9" is not a unit; write the number, a blank and the unit, as in 1.5 s or 1450 cartons/h`},
		{"5 s s s s s s s s s", quantity.Time, quantity.UnknownUnit, `"5 s s s s s s s s s" has too many parts; write a unit such as cartons/h`},
	}
	for _, tt := range tests {
		_, err := quantity.ParseAs(tt.text, tt.as)
		var e *quantity.Error
		if !errors.As(err, &e) {
			t.Errorf("ParseAs(%q) gave no *Error: %v", tt.text, err)
			continue
		}
		if e.Error() != tt.want || e.Kind != tt.kind {
			t.Errorf("ParseAs(%q):\n got %d %s\nwant %d %s", tt.text, e.Kind, e, tt.kind, tt.want)
		}
	}
}

func TestOutOfRange(t *testing.T) {
	_, long := parse(t, "1e12 s").Duration()
	_, broken := parse(t, "1.5 cartons").Count()
	_, many := parse(t, "1e25 cartons").Count()
	for want, err := range map[string]error{
		`"1e12 s" is too long; the longest time is 292 years`:                          long,
		`"1.5 cartons" is not a whole number; write a whole number such as 24 cartons`: broken,
		`"1e25 cartons" is too many; write a smaller number`:                           many,
	} {
		if err == nil || err.Error() != want {
			t.Errorf("got %v, want %s", err, want)
		}
	}
}

func TestNumber(t *testing.T) {
	for text, good := range map[string]bool{"0.9": true, "-3": true, "6e6": true, "0x10": false, "1_0": false, ".nan": false, "1,5": false, "9 s": false, "": false} {
		if _, err := quantity.Number(text); (err == nil) != good {
			t.Errorf("Number(%q): %v", text, err)
		}
	}
}

func TestNearest(t *testing.T) {
	known := []string{"close", "dwell", "open", "name", "kind"}
	for word, want := range map[string]string{
		"dwel": "dwell", "dwlel": "dwell", "OPEN": "open", "nmae": "name", "colour": "", "x": "", "": "", "kin": "kind", "clsoe": "close",
	} {
		if got := quantity.Nearest(word, known); got != want {
			t.Errorf("Nearest(%q) is %q, want %q", word, got, want)
		}
	}
}
