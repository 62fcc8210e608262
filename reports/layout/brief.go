package layout

import "slices"

// mostBrief is how many lines a brief answer may take on a screen.
const mostBrief = 10

// brief is what a page says in ten lines of so many columns: the answer with what it may not be read without, and
// then, as far as they fit, the warnings at it, what limits, and more of the answer.
func (p *Page) brief(columns int) *Page {
	answer, limits := p.find(func(s *Section) bool { return s.Answer }), p.find(func(s *Section) bool { return s.Limits })
	room := mostBrief - len(Wrap(p.Title, columns)) - 1
	take := func(list []string, most int) []string {
		for i, text := range list[:min(len(list), most)] {
			lines := len(Wrap(text, columns-2))
			if room < lines {
				return list[:i]
			}
			room -= lines
		}
		return list[:min(len(list), most)]
	}
	whole := 0
	if len(answer.Notes) > 0 {
		room -= 1
		whole = 1
	}
	text := answer.Text[:len(answer.Text)-len(answer.But)]
	said, but := text[:min(len(text), 1)], answer.But
	for _, sentence := range slices.Concat(said, but) {
		room -= len(Wrap(sentence, columns-2))
	}
	notes := take(answer.Notes, len(answer.Notes))
	if len(notes) == len(answer.Notes) {
		room += whole
	} else {
		notes = append(slices.Clone(notes), "More warnings stand in the whole report")
	}
	why := take(limits.Text, 1)
	said = append(slices.Clone(said), take(text[len(said):], len(text))...)
	out := &Page{Title: p.Title}
	out.Add(Section{Answer: true, Text: slices.Concat(said, but, why), Notes: notes})
	return out
}

// find is the first section of a kind; an empty one where there is none.
func (p *Page) find(is func(*Section) bool) Section {
	for i := range p.Sections {
		if is(&p.Sections[i]) {
			return p.Sections[i]
		}
	}
	return Section{}
}
