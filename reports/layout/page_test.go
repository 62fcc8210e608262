package layout_test

import (
	"bytes"
	"encoding/csv"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"dwellcast/reports/layout"
)

// invented is a page with all that may stand on one, and words that try to be more than words.
func invented() *layout.Page {
	p := &layout.Page{Title: "=cmd|' /C calc'!A0 <script>alert(1)</script>"}
	p.Add(layout.Section{Answer: true, Text: []string{"1234 cartons an hour"}})
	t := &layout.Table{Columns: []layout.Column{layout.Words("where"), layout.Words("cause"), layout.Figures("car-\ntons", "cartons"), layout.Aside("±")}}
	iv := layout.Interval{Mean: 12.345, Low: 11, High: 13.69, Confidence: 0.95}
	t.Add(layout.Word("+filler"), layout.Word("a|b"), layout.Estimate(iv).In("cartons/shift"), layout.HalfWidth(iv))
	t.Add(layout.Word("@sealer"), layout.Word("jam"), layout.Unseen().In("cartons/shift"), layout.Word(""))
	t.Foot = []layout.Cell{layout.Word("sum"), layout.Blank, layout.Exact(12).In("cartons/shift"), layout.Blank}
	p.Add(layout.Section{Key: "loss", Heading: "Losses: where/what?", Table: t, Notes: []string{"[1] a note"}})
	d := &layout.Table{Columns: []layout.Column{layout.Words("name"), layout.Figures("value", "value")}}
	d.Add(layout.Word("seed"), layout.Word("18446744073709551615"))
	p.Add(layout.Section{Key: "run", Data: true, Table: d})
	p.Add(layout.Section{Heading: "Nothing to say"})
	return p
}

func written(t *testing.T, write func(io.Writer) error) string {
	t.Helper()
	var out bytes.Buffer
	if err := write(&out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

func TestCSVKeepsAllDigitsAndNoFormula(t *testing.T) {
	records, err := csv.NewReader(strings.NewReader(written(t, func(w io.Writer) error { return invented().CSV(w, false) }))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	want := [][]string{
		{"section", "name", "item", "value", "low", "high", "unit"},
		{"loss", "'+filler/a|b", "cartons", "12.345", "11", "13.69", "cartons/shift"},
		{"loss", "'@sealer/jam", "cartons", "~", "~", "~", "cartons/shift"},
		{"loss", "sum", "cartons", "12", "", "", "cartons/shift"},
		{"run", "seed", "value", "18446744073709551615", "", "", ""},
	}
	for i, row := range want {
		if strings.Join(records[i], ";") != strings.Join(row, ";") {
			t.Errorf("row %d: %q, want %q", i, records[i], row)
		}
	}
	for _, record := range records {
		for _, cell := range record {
			if cell != "" && strings.ContainsRune("=+@\t", rune(cell[0])) {
				t.Errorf("%q may be taken for a formula", cell)
			}
		}
	}
}

func TestWorkbookHoldsNumbersAndText(t *testing.T) {
	book, err := excelize.OpenReader(strings.NewReader(written(t, invented().Workbook)))
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	if got := strings.Join(book.GetSheetList(), ","); got != "Answer,Losses wherewhat,run" {
		t.Errorf("sheets are %s", got)
	}
	rows, err := book.GetRows("Losses wherewhat", excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	if strings.Join(rows[0], ";") != "where;cause;cartons, cartons/shift;cartons, cartons/shift, low;cartons, cartons/shift, high;±" || rows[1][2] != "12.345" {
		t.Errorf("rows are %q", rows)
	}
	for _, sheet := range book.GetSheetList() {
		formula, err := book.GetCellFormula(sheet, "A1")
		if err != nil || formula != "" {
			t.Errorf("%s has a formula %q, %v", sheet, formula, err)
		}
	}
}

func TestHTMLHasNoMarkupOfItsNames(t *testing.T) {
	html := written(t, invented().HTML)
	if strings.Contains(html, "<script") || !strings.Contains(html, "&lt;script&gt;") {
		t.Error("a title became markup")
	}
	if strings.Contains(html, "seed") || strings.Contains(html, "Nothing to say") {
		t.Error("data or an empty section is shown")
	}
}

func TestScreenFits(t *testing.T) {
	screen := written(t, func(w io.Writer) error { return invented().Terminal(w, layout.Style{Width: 80}) })
	for _, line := range strings.Split(screen, "\n") {
		if len([]rune(line)) > 80 {
			t.Errorf("%q is too wide", line)
		}
	}
	if !strings.Contains(screen, "12.3") || strings.Contains(screen, "12.345") {
		t.Error("an estimate is not shown to the digits that its interval supports:", screen)
	}
}

func TestCellsSayWhatIsNotKnown(t *testing.T) {
	for _, c := range []layout.Cell{layout.Number(math.NaN(), 1), layout.Exact(math.Inf(1)), layout.Estimate(layout.Interval{Mean: math.NaN()}), layout.Unseen()} {
		if c.Text() != layout.None {
			t.Errorf("%q stands for what is not known", c.Text())
		}
	}
}
