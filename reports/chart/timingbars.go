package chart

import (
	"strings"
	"unicode/utf8"
)

// Characters of a bar: its first column, and the others on and off the critical path; and slack.
const (
	barStart    = '|'
	barPlain    = '='
	barCritical = '*'
	barSlack    = '/'
)

// windows draws a row of bars, slack first so that bars hide it, and writes names into bars that hold them. Windows without a name
// anywhere are remembered.
func (s *textSheet) windows(r WindowRow) []rune {
	out := s.blank()
	for _, w := range r.Windows {
		span := s.unwrapped(w.Span)
		for _, o := range s.occurrences(Span{span.From, span.To + s.degrees(w.Slack)}) {
			for c := s.column(o.To - s.degrees(w.Slack)); c < s.column(o.To); c++ {
				out[c] = barSlack
			}
		}
	}
	named := map[string]bool{}
	for _, critical := range []bool{false, true} {
		for _, w := range r.Windows {
			if w.Critical == critical {
				named[w.Name] = s.bar(out, w)
			}
		}
	}
	var short []string
	for _, w := range r.Windows {
		if !named[w.Name] {
			short = append(short, w.Name+" "+brief(w.Span.From)+" to "+brief(w.Span.To)+" deg")
		}
	}
	if len(short) > 0 {
		s.unnamed = append(s.unnamed, r.Name+": "+strings.Join(short, ", "))
	}
	return out
}

// bar draws the repeats of a window and says whether one of them holds its name.
func (s *textSheet) bar(out []rune, w Window) (named bool) {
	fill := barPlain
	if w.Critical {
		fill = barCritical
	}
	for _, o := range s.occurrences(w.Span) {
		from, to := s.column(o.From), s.column(o.To)
		if to == from {
			// Even the shortest window leaves a mark.
			from = min(from, s.columns-1)
			to = from + 1
		}
		for c := from; c < to; c++ {
			out[c] = fill
		}
		if o.From >= 0 && to > from+1 {
			out[from] = barStart
		}
		if n := utf8.RuneCountInString(w.Name); n > 0 && n+3 <= to-from {
			copy(out[from+1+(to-from-1-n)/2:], []rune(w.Name))
			named = true
		}
	}
	return named || w.Name == ""
}

// legend explains the characters in use.
func (s *textSheet) legend() {
	var parts []string
	if len(s.Curves) > 0 && s.ascii {
		parts = append(parts, ". 1 ... 9 displacement from rest to full stroke")
	}
	plain, critical, slack := false, false, false
	for _, r := range s.Rows {
		for _, w := range r.Windows {
			plain, critical, slack = plain || !w.Critical, critical || w.Critical, slack || w.Slack > 0
		}
	}
	for _, p := range []struct {
		used  bool
		words string
	}{{plain, "= at work"}, {critical, "* no slack"}, {slack, "/ slack"}} {
		if p.used {
			parts = append(parts, p.words)
		}
	}
	s.list(strings.Join(parts, ";  "), 0)
}

// notes lists slack, margins and the windows that were too short for their names.
func (s *textSheet) notes() {
	for _, r := range s.Rows {
		var slack []string
		for _, w := range r.Windows {
			if w.Slack > 0 {
				slack = append(slack, w.Name+" "+slackWords(w.Slack))
			}
		}
		if len(slack) > 0 {
			s.list("slack of "+r.Name+": "+strings.Join(slack, ", "), 2)
		}
	}
	for _, row := range s.unnamed {
		s.list("short at "+row, 2)
	}
	for _, m := range s.Margins {
		s.list("margin: "+m.Text, 2)
	}
}

// list writes words in lines of the screen's width, the second and later ones indented.
func (s *textSheet) list(words string, indent int) {
	if words == "" {
		return
	}
	for i, line := range chunks(words, s.width-indent) {
		if i > 0 {
			line = strings.Repeat(" ", indent) + line
		}
		s.out.WriteString(line + "\n")
	}
}
