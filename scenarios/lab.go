package scenarios

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"

	"dwellcast/scenarios/document"
)

// Lab runs the lines that a decision compares. All share the seed, and so their luck; a line met again is not run again; and
// what was run can be saved and gone on from, with the same answer to the byte.
type Lab struct {
	options Options
	study   string
	cases   map[string]*Shifts
	saved   map[string]savedCase
}

// NewLab returns a lab for a study. The name and the lines of a study make up its digest, so that results saved for one are
// not taken for another's.
func NewLab(study string, o Options) *Lab {
	return &Lab{options: o, study: digest(study), cases: map[string]*Shifts{}, saved: map[string]savedCase{}}
}

// Shifts returns the shifts of a line, none of them run yet unless the line was met before.
func (l *Lab) Shifts(f *File) (*Shifts, error) {
	text, err := document.Render(f.Document)
	if err != nil {
		return nil, err
	}
	return l.shifts(digest(text), f)
}

// shifts returns the shifts that are kept under a key, or prepares them.
func (l *Lab) shifts(key string, f *File) (*Shifts, error) {
	if known, ok := l.cases[key]; ok {
		return known, nil
	}
	r, err := NewShifts(f, l.options)
	if err != nil {
		return nil, err
	}
	if kept, ok := l.saved[key]; ok {
		if err := kept.restore(r.sample); err != nil {
			return nil, err
		}
	}
	l.cases[key] = r
	return r, nil
}

// With returns the file changed by overrides such as "sealer.dwell=1.3 s".
func (f *File) With(overrides ...string) (*File, error) {
	root := f.Document.Clone()
	var words []string
	for _, change := range overrides {
		word, err := override(root, change)
		if err != nil {
			return nil, err
		}
		words = append(words, word)
	}
	changed, err := Interpret(f.Name, root)
	if err != nil {
		return nil, err
	}
	changed.Overrides = slices.Concat(f.Overrides, words)
	return changed, nil
}

func digest(text string) string {
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:16])
}
