package chart_test

import (
	"bytes"
	"compress/zlib"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"strings"
	"testing"
	"unicode/utf16"

	"dwellcast/reports/chart"
)

func TestFormatOf(t *testing.T) {
	for file, want := range map[string]chart.Format{"a.svg": chart.SVG, "dir.x/b.PNG": chart.PNG, "c.tar.pdf": chart.PDF} {
		if got, err := chart.FormatOf(file); err != nil || got != want {
			t.Errorf("FormatOf(%q) = %q, %v; want %q", file, got, err, want)
		}
	}
	for _, file := range []string{"chart", "chart.jpg", ".svg.bak", ""} {
		if _, err := chart.FormatOf(file); err == nil || !strings.Contains(err.Error(), ".svg, .png or .pdf") {
			t.Errorf("FormatOf(%q): %v; want a hint at what is possible", file, err)
		}
	}
}

func TestSameBytes(t *testing.T) {
	for _, name := range []string{"timing", "grid", "shares"} {
		for _, f := range chart.Formats() {
			if !bytes.Equal(drawn(t, samples()[name], f), drawn(t, samples()[name], f)) {
				t.Errorf("%s.%s differs from one writing to the next", name, f)
			}
		}
	}
}

// svgText reads a file as XML and gives the contents of its title, desc and text elements.
func svgText(t *testing.T, data []byte) (title, desc string, texts []string) {
	t.Helper()
	dec := xml.NewDecoder(bytes.NewReader(data))
	var inside []string
	for {
		token, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return title, desc, texts
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			inside = append(inside, token.Name.Local)
			for _, a := range token.Attr {
				if a.Name.Local == "href" || a.Name.Local == "id" || strings.Contains(a.Value, "url(") || strings.Contains(a.Value, "NaN") || strings.Contains(a.Value, "Inf") {
					t.Errorf("attribute %s=%q", a.Name.Local, a.Value)
				}
			}
		case xml.EndElement:
			inside = inside[:len(inside)-1]
		case xml.CharData:
			switch strings.Join(inside, "/") {
			case "svg/title":
				title += string(token)
			case "svg/desc":
				desc += string(token)
			case "svg/text":
				texts = append(texts, string(token))
			}
		}
	}
}

func TestSVG(t *testing.T) {
	for name, c := range samples() {
		data := drawn(t, c, chart.SVG)
		_, desc, texts := svgText(t, data)
		if desc == "" || len(texts) == 0 {
			t.Errorf("%s: description %q and %d texts", name, desc, len(texts))
		}
		for _, rule := range []string{"prefers-color-scheme:dark", "@media print", "font-family:Arial", "sans-serif"} {
			if !bytes.Contains(data, []byte(rule)) {
				t.Errorf("%s has no %s", name, rule)
			}
		}
	}
	title, _, texts := svgText(t, drawn(t, samples()["line-crowded"], chart.SVG))
	if !strings.HasPrefix(title, "Nine sealers") || !strings.Contains(strings.Join(texts, "\n"), "case 3 <A&B>") {
		t.Errorf("title %q, texts %q", title, texts)
	}
}

func TestControlCharactersLeaveTheSVGWellFormed(t *testing.T) {
	c := chart.Line{Caption: chart.Caption{Title: "a\x00b\x1b[31m\xff]]>&amp;\"'\n\uFFFE"}, Series: []chart.Series{{Name: "\x07", X: []float64{1, 2}, Y: []float64{1, 2}}}}
	if title, _, _ := svgText(t, drawn(t, c, chart.SVG)); title != "ab[31m?]]>&amp;\"' " {
		t.Errorf("title %q", title)
	}
}

func TestPNGHasInk(t *testing.T) {
	for name, c := range samples() {
		d, err := c.Draw()
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(drawn(t, c, chart.PNG)))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		b := img.Bounds()
		if b.Dx() != int(2*d.Width+0.5) {
			t.Errorf("%s: %d pixels wide for %g points; want two a point", name, b.Dx(), d.Width)
		}
		dark := 0
		for y := b.Min.Y; y < b.Max.Y; y++ {
			for x := b.Min.X; x < b.Max.X; x++ {
				if r, _, _, _ := img.At(x, y).RGBA(); r < 0x8000 {
					dark++
				}
			}
		}
		if share := float64(dark) / float64(b.Dx()*b.Dy()); share < 0.001 || share > 0.6 {
			t.Errorf("%s: %.4f of the pixels are dark", name, share)
		}
	}
}

// pdfStreams unpacks the compressed streams of a file.
func pdfStreams(data []byte) []byte {
	var out bytes.Buffer
	for _, part := range bytes.Split(data, []byte("stream\n"))[1:] {
		if r, err := zlib.NewReader(bytes.NewReader(part)); err == nil {
			// The end of a stream is found by its own checksum; what follows is not read.
			_, _ = io.Copy(&out, r)
		}
	}
	return out.Bytes()
}

func TestPDFHoldsText(t *testing.T) {
	data := drawn(t, samples()["line-scales"], chart.PDF)
	if !bytes.HasPrefix(data, []byte("%PDF-1.")) || !bytes.HasSuffix(bytes.TrimSpace(data), []byte("%%EOF")) {
		t.Errorf("file starts with %q and ends with %q", data[:8], data[len(data)-8:])
	}
	page := pdfStreams(data)
	for _, words := range []string{"zażółć gęślą jaźń", "300", "diffusivity"} {
		var code []byte
		for _, u := range utf16.Encode([]rune(words)) {
			code = append(code, byte(u>>8), byte(u))
		}
		if !bytes.Contains(page, code) {
			t.Errorf("no text %q in the file", words)
		}
	}
}
