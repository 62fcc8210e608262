package decisions

import (
	"errors"
	"fmt"
	"math"
	"strconv"

	"dwellcast/scenarios"
	"dwellcast/scenarios/document"
	"dwellcast/scenarios/quantity"
)

// bySetting is the key of a table from setting to factor.
const bySetting = "by_setting"

// speedCauses lists the paths of the stops, misses and rejects of a file: those with a table by setting, and those without.
func speedCauses(f *scenarios.File) (tables, untabled []string) {
	for _, n := range speedNodes(f) {
		if n.Has(bySetting) {
			tables = append(tables, n.Path())
		} else {
			untabled = append(untabled, n.Path())
		}
	}
	return tables, untabled
}

// speedNodes are the nodes of a file that say how often something goes wrong.
func speedNodes(f *scenarios.File) []*document.Node {
	var nodes []*document.Node
	for i := range f.Line.Stations {
		st := &f.Line.Stations[i]
		at := "stations." + strconv.Itoa(i+1)
		if st.Miss.Chance > 0 {
			nodes = appendFound(nodes, f, at+".miss")
		}
		if st.Reject > 0 {
			nodes = appendFound(nodes, f, at+".reject")
		}
		for k := range st.Stops {
			nodes = appendFound(nodes, f, at+".stops."+strconv.Itoa(k+1))
		}
	}
	return nodes
}

func appendFound(nodes []*document.Node, f *scenarios.File, path string) []*document.Node {
	if n, err := document.Find(f.Document, path); err == nil {
		return append(nodes, n)
	}
	return nodes
}

// band runs the selection again with the untabled causes growing in proportion to a power of the speed.
func (p *pacing) band(a *Pace, settings []float64) error {
	if len(a.Untabled) == 0 {
		return nil
	}
	for _, exponent := range p.spec.Exponents {
		choice, err := p.chooseFinely(settings, func(f *scenarios.File, setting float64) (*scenarios.File, error) {
			return withSlope(f, setting, exponent)
		})
		b := Band{Exponent: exponent}
		switch list, ok := errors.AsType[document.ProblemList](err); {
		case ok:
			b.Failed = list[0].Message
		case err != nil:
			return err
		default:
			b.Choice = *choice
		}
		a.Band = append(a.Band, b)
	}
	return nil
}

// withSlope is the line at a setting, its untabled causes as frequent as the file says times (setting / today's)^exponent.
func withSlope(f *scenarios.File, setting, exponent float64) (*scenarios.File, error) {
	root := f.Document.Clone()
	rate := quantity.FormatRate(setting)
	factor := math.Pow(setting/f.Line.Setting, exponent)
	table := fmt.Sprintf("[{at: %s, factor: %.9f}]", rate, factor)
	for _, n := range speedNodes(f) {
		if n.Has(bySetting) {
			continue
		}
		if err := addTable(root, n, table); err != nil {
			return nil, err
		}
	}
	if err := document.Set(root, "setting", rate); err != nil {
		return nil, err
	}
	// At today's setting every power gives the same line; a title of its own keeps the results of each apart.
	title := fmt.Sprintf("%s, causes growing with speed to the power of %g", f.Line.Title, exponent)
	if err := document.Set(root, "title", strconv.Quote(title)); err != nil {
		return nil, err
	}
	return scenarios.Interpret(f.Name, root)
}

// addTable gives a cause a table. A chance that stands alone becomes a map with the chance in it.
func addTable(root, n *document.Node, table string) error {
	path := n.Path()
	if n.Kind() == document.Scalar || n.IsAssumption() {
		if err := document.Set(root, path, "{chance: 0 %}"); err != nil {
			return err
		}
		if err := document.SetNode(root, path+".chance", n); err != nil {
			return err
		}
	}
	return document.Set(root, path+"."+bySetting, table)
}
