package scenarios

import "dwellcast/scenarios/document"

// Release keeps only the results of a line, so that a study of thousands of lines fits into memory. Asked for the line again,
// the lab goes on from them.
func (l *Lab) Release(f *File) error {
	text, err := document.Render(f.Document)
	if err != nil {
		return err
	}
	key := digest(text)
	if l.saved == nil {
		l.saved = map[string]savedCase{}
	}
	if r, ok := l.cases[key]; ok {
		l.saved[key] = savedCase{r.sample.good, r.sample.moment, r.sample.total.Cells(), r.sample.losses}
		delete(l.cases, key)
	}
	return nil
}
