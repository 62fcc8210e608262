package decisions

import (
	"fmt"
	"slices"
	"strings"

	"dwellcast/scenarios"
	"dwellcast/scenarios/document"
)

// Input is a quantity of a line or study file that carries a source or a range.
type Input struct {
	document.Assumption
	// Of names the candidates or cases whose lines it belongs to, where these are not all.
	Of []string
	// line says that it is a quantity of lines, and files which of them.
	line  bool
	files []int
}

// Name is the path, with whose it is where it belongs to some lines only.
func (i Input) Name() string {
	switch {
	case len(i.Of) == 0:
		return i.Path
	case len(i.Of) > 2:
		return fmt.Sprintf("%s (%d of the lines)", i.Path, len(i.Of))
	}
	return i.Path + " (" + strings.Join(i.Of, ", ") + ")"
}

// Ranged says that it has a low or a high value.
func (i Input) Ranged() bool { return i.Low != "" || i.High != "" }

// belongsTo says that it is a quantity of the line of that index; nothing belongs to no input.
func (i *Input) belongsTo(file int) bool { return i != nil && i.line && slices.Contains(i.files, file) }

// InputsOf lists the quantities of lines, and then of a study, that carry a source or a range. A quantity that several lines have
// alike is one. The study may be nil.
func InputsOf(names []string, files []*scenarios.File, study *scenarios.Study) []Input {
	var list []Input
	for k, f := range files {
		for _, a := range f.Assumptions {
			at := slices.IndexFunc(list, func(i Input) bool { return alike(i.Assumption, a) })
			if at < 0 {
				list = append(list, Input{Assumption: a, line: true})
				at = len(list) - 1
			}
			list[at].files = append(list[at].files, k)
			list[at].Of = append(list[at].Of, names[k])
		}
	}
	for i := range list {
		if len(list[i].files) == len(files) {
			list[i].Of = nil
		}
	}
	if study != nil {
		for _, a := range study.Document.Assumptions() {
			list = append(list, Input{Assumption: a})
		}
	}
	return list
}

func alike(a, b document.Assumption) bool {
	return a.Path == b.Path && a.Value == b.Value && a.Low == b.Low && a.High == b.High && a.Source == b.Source
}
