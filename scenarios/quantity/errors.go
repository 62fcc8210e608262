package quantity

import "strings"

// A Kind says what is wrong with a quantity.
type Kind int

// What can be wrong with a quantity.
const (
	BadNumber      Kind = iota // not a finite decimal number
	MissingUnit                // a number alone
	UnknownUnit                // a unit that is not in the table
	WrongDimension             // a good quantity of another dimension
	OutOfRange                 // too large to hold, or not whole where it must be
)

// An Error says what is wrong with a quantity and what to write instead.
type Error struct {
	Kind    Kind
	Text    string // the offending text
	Message string // what is wrong with it, to follow the text
	Hint    string // what to do

	offer string // the unit that was probably meant
}

// Error is the message and the hint on one line.
func (e *Error) Error() string {
	return `"` + e.Text + `" ` + e.Message + "; " + e.Hint
}

func badNumber(text, message, hint string) *Error {
	return &Error{Kind: BadNumber, Text: text, Message: message, Hint: hint}
}

func badUnit(text, message, hint string) *Error {
	return &Error{Kind: UnknownUnit, Text: text, Message: message, Hint: hint}
}

func wrong(q Quantity, message, hint string) *Error {
	return &Error{Kind: WrongDimension, Text: q.String(), Message: message, Hint: hint}
}

func outOfRange(q Quantity, message, hint string) *Error {
	return &Error{Kind: OutOfRange, Text: q.String(), Message: message, Hint: hint}
}

// otherCounts are what people count beside cartons, with what to write.
var otherCounts = map[string]string{
	"case":   "write the number in cartons: cases times cartons a case",
	"pallet": "write the number in cartons: pallets times cartons a pallet",
	"pack":   "write the number in cartons",
	"tray":   "write the number in cartons: trays times cartons a tray",
	"bottle": "write the number in cartons",
	"cycle":  "write the number in cartons: cycles times lanes",
}

// unknownUnit offers the nearest unit word, put into the unit as it was written.
func unknownUnit(whole, name string) *Error {
	err := badUnit(whole, "has an unknown unit", "write a unit such as s, min, h, cartons, cartons/h, %, mm, in or deg")
	if hint, other := otherCounts[strings.ToLower(strings.TrimSuffix(name, "s"))]; other {
		err.Message, err.Hint = "counts something else than cartons", hint
		return err
	}
	if near := Nearest(name, unitNames); near != "" {
		err.offer = strings.Replace(whole, name, near, 1)
		err.Hint = "write " + err.offer
	}
	return err
}

// after sets the error of a unit behind its number.
func (e *Error) after(number, text string) *Error {
	e.Text = text
	if e.offer != "" {
		e.Hint = "write " + number + " " + e.offer
	}
	return e
}

// missingUnit offers the number with the units of the wanted dimension.
func missingUnit(number string, want []string) *Error {
	offers := make([]string, len(want))
	for i, u := range want {
		offers[i] = number + " " + u
	}
	return &Error{Kind: MissingUnit, Text: number, Message: "has no unit", Hint: "write " + alternatives(offers)}
}

// alternatives joins offers in words: "a, b or c".
func alternatives(offers []string) string {
	last := len(offers) - 1
	if last == 0 {
		return offers[0]
	}
	return strings.Join(offers[:last], ", ") + " or " + offers[last]
}
