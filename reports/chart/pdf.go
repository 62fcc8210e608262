package chart

import (
	"bytes"
	"io"
	"time"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"codeberg.org/go-pdf/fpdf"
)

// pdfDate stands in every file, so that the same drawing gives the same bytes.
var pdfDate = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// writePDF writes one page of the drawing's size, text as text with the used part of the font.
//
// It calls the library under gonum's vgpdf directly: vgpdf dates the file, so that no two are alike, and knows the letters of
// Western Europe only.
func (d *Drawing) writePDF(w io.Writer) error {
	page := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: d.Width, Ht: d.Height}})
	page.SetCatalogSort(true)
	page.SetCreationDate(pdfDate)
	page.SetModificationDate(pdfDate)
	page.SetTitle(d.Title, true)
	page.SetSubject(d.Description, true)
	page.AddUTF8FontFromBytes("sans", "", bytes.Clone(liberationsansregular.TTF))
	page.AddUTF8FontFromBytes("sans", "B", bytes.Clone(liberationsansbold.TTF))
	page.SetAutoPageBreak(false, 0)
	page.AddPage()
	page.SetLineJoinStyle("round")
	for _, s := range d.shapes {
		switch s := s.(type) {
		case path:
			s.pdf(page)
		case disc:
			page.Circle(s.centre.x, s.centre.y, s.radius, s.look.pdf(page))
		case label:
			s.pdf(page)
		}
	}
	return page.Output(w)
}

func (p path) pdf(page *fpdf.Fpdf) {
	how := p.look.pdf(page)
	for _, run := range p.runs {
		for i, at := range run {
			if i == 0 {
				page.MoveTo(at.x, at.y)
			} else {
				page.LineTo(at.x, at.y)
			}
		}
		if p.closed {
			page.ClosePath()
		}
	}
	page.DrawPath(how)
}

func (l label) pdf(page *fpdf.Fpdf) {
	weight := ""
	if l.bold {
		weight = "B"
	}
	page.SetAlpha(1, "Normal")
	page.SetFont("sans", weight, l.size)
	c := l.ink.rgb()
	page.SetTextColor(int(c.R), int(c.G), int(c.B))
	shift := page.GetStringWidth(l.words) * float64(l.anchor) / 2
	if l.angle == 0 {
		page.Text(l.at.x-shift, l.at.y, l.words)
		return
	}
	page.TransformBegin()
	page.TransformRotate(l.angle, l.at.x, l.at.y)
	page.Text(l.at.x-shift, l.at.y, l.words)
	page.TransformEnd()
}

// pdf sets the page's colours and pen and gives the letters for filling and stroking.
func (l look) pdf(page *fpdf.Fpdf) string {
	alpha, how := 1.0, ""
	if l.fill != none {
		c := l.fill.rgb()
		page.SetFillColor(int(c.R), int(c.G), int(c.B))
		how = "F"
		if l.faint {
			alpha = faintness
		}
	}
	if l.line != none {
		c := l.line.rgb()
		page.SetDrawColor(int(c.R), int(c.G), int(c.B))
		page.SetLineWidth(l.width)
		page.SetDashPattern(append([]float64{}, l.dash...), 0)
		how += "D"
	}
	page.SetAlpha(alpha, "Normal")
	return how
}
