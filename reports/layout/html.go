package layout

import (
	"bytes"
	"crypto/sha256"
	_ "embed"
	"encoding/base64"
	"html/template"
	"io"
	"maps"
	"regexp"
	"slices"
	"strings"
)

//go:embed layout.css
var sheet string

//go:embed layout.html
var frame string

var skeleton = template.Must(template.New("page").Funcs(template.FuncMap{"lines": unbrokenHead, "last": func(i, n int) bool { return i == n-1 }}).Parse(frame))

// HTML writes a page as one file that asks for nothing from anywhere: its policy allows no script, no request, and no style but its
// own, named by digest. It reads on a screen, light and dark, on a phone, aloud, and on paper.
func (p *Page) HTML(w io.Writer) error {
	v := htmlPage{Page: p, Sheet: template.CSS(sheet), LogoURI: template.URL(p.Logo)}
	styles := map[string]bool{sheet: true}
	for i := range p.Sections {
		s := &p.Sections[i]
		if s.Data {
			continue
		}
		section := htmlSection{Section: s}
		if !s.Table.empty() {
			section.Table = s.Table.seen()
		}
		for _, picture := range s.Pictures {
			var svg bytes.Buffer
			if err := picture.SVG(&svg); err != nil {
				return err
			}
			for _, style := range stylesIn(svg.String()) {
				styles[style] = true
			}
			section.Drawn = append(section.Drawn, htmlPicture{picture.Caption, template.HTML(svg.String())})
		}
		v.Sections = append(v.Sections, section)
	}
	for i := range v.Sections {
		v.Sections[i].Front = i < slices.IndexFunc(v.Sections, func(s htmlSection) bool { return s.Break })
	}
	v.Policy = policy(styles)
	if p.Logo != "" {
		v.Policy += "; img-src data:"
	}
	return skeleton.Execute(w, v)
}

type htmlPage struct {
	*Page
	Policy   string
	LogoURI  template.URL
	Sheet    template.CSS
	Sections []htmlSection
}

type htmlSection struct {
	*Section
	Table *Table // as readers see it
	Drawn []htmlPicture
	Front bool // before the first break
}

type htmlPicture struct {
	Caption string
	Drawing template.HTML
}

var styleElement = regexp.MustCompile(`(?s)<style>(.*?)</style>`)

// stylesIn are the style sheets within a drawing.
func stylesIn(svg string) []string {
	var list []string
	for _, found := range styleElement.FindAllStringSubmatch(svg, -1) {
		list = append(list, found[1])
	}
	return list
}

// policy is a Content-Security-Policy that allows these styles and nothing else.
func policy(styles map[string]bool) string {
	words := []string{"default-src 'none'; base-uri 'none'; form-action 'none'; style-src"}
	for _, style := range slices.Sorted(maps.Keys(styles)) {
		sum := sha256.Sum256([]byte(style))
		words = append(words, "'sha256-"+base64.StdEncoding.EncodeToString(sum[:])+"'")
	}
	return strings.Join(words, " ")
}

// unbrokenHead is a head on one line.
func unbrokenHead(head string) string {
	return strings.ReplaceAll(strings.ReplaceAll(head, "-\n", ""), "\n", " ")
}
