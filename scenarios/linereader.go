package scenarios

import (
	"errors"
	"fmt"
	"time"

	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
	"dwellcast/stations"
)

// Sizes that a line may have. They are far beyond any real line, and keep a mistyped file from filling the memory.
const (
	mostStations = 200
	mostPitches  = 10_000
	mostLanes    = 50
	mostUnits    = 100
)

// lineReader reads a line file. It goes on after a mistake, so that all of them are found at once.
type lineReader struct {
	p      document.Problems
	file   *File
	line   *stations.Line
	list   *document.Node // of stations
	drafts []*draft
	// carton, liquid and freeboard are where these were written; nil where they were not.
	carton, liquid, freeboard *document.Node
	// groundless says that the setting was given but could not be read, so that what rests on it is not complained of too.
	groundless bool
}

// read reads the whole document; the setting comes first, since other quantities depend on it.
func (r *lineReader) read(root *document.Node) {
	f := root.Map(&r.p)
	if f.Node() == nil {
		return
	}
	r.line.Title = f.Take("title").Text(&r.p)
	r.readSetting(f)
	if n := f.Take("lanes"); n != nil {
		r.line.Lanes = max(1, n.Count(&r.p, document.Limit{Min: "1", Hint: "write lanes: 1 for one carton on a pitch"},
			document.Limit{Max: fmt.Sprint(mostLanes)}))
	}
	r.readShift(f.Take("shift"), f.Take("run"))
	r.readCrew(f.Take("crew"))
	r.readCarton(f.Take("carton"))
	r.readLiquid(f.Take("liquid"))
	r.readStations(f)
	r.completeLiquid()
	r.readTarget(f.Take("target"))
	f.Done()
	r.checkLine(root)
}

func (r *lineReader) readSetting(f *document.Fields) {
	n := f.Take("setting")
	r.line.Setting = n.Rate(&r.p, document.Limit{Min: "1 cartons/h"}, document.Limit{Max: "1000000 cartons/h"})
	r.groundless = n != nil && r.line.Setting == 0
}

// readTarget reads a number of good cartons per shift, or a rate over the whole shift.
func (r *lineReader) readTarget(n *document.Node) {
	if n == nil {
		return
	}
	const hint = "write for example 10000 cartons for a shift, or 1250 cartons/h"
	inner := n.Assumed(&r.p)
	q, err := quantity.Parse(inner.Raw())
	switch {
	case err == nil && q.Is(quantity.Rate):
		r.file.Target = n.Rate(&r.p) * r.unitShift().Hours()
	case err == nil && !q.Is(quantity.Count):
		r.p.Add(inner, "is neither a number of cartons nor a rate", hint)
	case err == nil, inner.Kind() != document.Scalar:
		r.file.Target = n.Measure(&r.p, quantity.Count, "cartons", document.Limit{Above: "0 cartons", Max: "1000000000 cartons"})
	default:
		r.addQuantity(n, err, func(number string) string {
			return "write " + number + " cartons for a shift, or " + number + " cartons/h"
		})
	}
}

// unitShift is the length of time that figures per shift are given for.
func (r *lineReader) unitShift() time.Duration {
	if r.file.Steady != nil {
		return r.file.Steady.Shift
	}
	return r.line.Shift.Length
}

// addQuantity reports what is wrong with a single value; where only its unit is missing, offer makes the hint.
func (r *lineReader) addQuantity(n *document.Node, err error, offer func(number string) string) {
	n = n.Assumed(&r.p)
	message, hint := err.Error(), ""
	if e, ok := errors.AsType[*quantity.Error](err); ok {
		message, hint = e.Message, e.Hint
		if e.Kind == quantity.MissingUnit {
			hint = offer(e.Text)
		}
	}
	r.p.Add(n, message, hint)
}

// name reads what something is called; it must fit into a table.
func (r *lineReader) name(n *document.Node) string {
	name := n.Text(&r.p)
	if len([]rune(name)) > mostLetters {
		r.p.Add(n, "is a long name", fmt.Sprintf("a name has %d letters at most", mostLetters))
	}
	return name
}

// mostLetters is how long a name may be.
const mostLetters = 40

// warn notes what is legal in the file but can hardly be meant.
func (r *lineReader) warn(about, format string, values ...any) {
	r.file.Warnings = append(r.file.Warnings, Warning{About: about, Text: fmt.Sprintf(format, values...)})
}
