package reports

import (
	"fmt"
	"io"
	"math"

	"dwellcast/reports/chart"
	"dwellcast/reports/layout"
	"dwellcast/scenarios/quantity"
	"dwellcast/sim/lifedata"
)

// Fits is what distributions fit some times.
type Fits struct {
	Origin Origin
	File   string
	// Unit is that of the file, UnitSeconds its length.
	Unit        string
	UnitSeconds float64
	// Sample in seconds, and the laws fitted to it, the lowest AIC first.
	Sample     []lifedata.Time
	Laws       []*lifedata.Fit
	Confidence float64
}

// Fit writes fitted distributions. Style matters to the table format only.
func Fit(w io.Writer, f *Fits, format Format, style Style) error {
	return report{
		page:   func(Style) *layout.Page { return fitPage(f) },
		json:   func() error { return fitJSON(w, f) },
		charts: func() []chart.Chart { return []chart.Chart{FitChart(f)} },
	}.write(w, format, style)
}

func fitPage(f *Fits) *layout.Page {
	best := f.Laws[0]
	events := lifedata.Events(f.Sample)
	mean := f.inUnit(best.Mean)
	p := &layout.Page{Title: "Distributions that fit " + f.File}
	p.Add(layout.Section{Answer: true, Text: []string{
		fmt.Sprintf("The %s distribution describes these times best, by its AIC: a mean of %s %s%s", best.Law, figures4(mean.Mean), f.Unit, boundsIn(mean, f.Unit)),
		fmt.Sprintf("%s, of which %d ended and %d were cut off; %s %s in all", quantity.FormatCount(int64(len(f.Sample)), "time"), events, len(f.Sample)-events,
			figures4(lifedata.Total(f.Sample)/f.UnitSeconds), f.Unit),
		"In a line file: " + f.lineWords(best)}})
	p.Add(f.lawTable())
	p.Add(f.parameterTable())
	p.Add(layout.Section{Heading: "Notes", Notes: append(f.notes(),
		fmt.Sprintf("Maximum likelihood, times that were cut off counted for as long as they were seen to last. Intervals at %s by Wald's method, on the logarithm of what is above 0. "+
			"AIC: lower describes the times better for as many parameters; less than 2 apart tells little.", layout.Confidence(f.Confidence)),
		"Repeat it: "+f.Origin.Line)})
	return p
}

// notes warn of what the fits can't know.
func (f *Fits) notes() []string {
	var notes []string
	if events := lifedata.Events(f.Sample); events < 10 {
		notes = append(notes, fmt.Sprintf("Only %s: nothing is sure that rests on so few", quantity.FormatCount(int64(events), "event")))
	}
	if len(f.Laws) > 1 && f.Laws[1].AIC-f.Laws[0].AIC < 2 {
		notes = append(notes, fmt.Sprintf("%s fits nearly as well (its AIC is %s more)", f.Laws[1].Law, layout.Fixed(f.Laws[1].AIC-f.Laws[0].AIC, 1)))
	}
	return append(notes, "One distribution supposes that nothing changed meanwhile; the file does not tell the order of the times, so no trend was looked for")
}

// lawTable lists the laws with their parameters.
func (f *Fits) lawTable() layout.Section {
	t := &layout.Table{Columns: []layout.Column{layout.Words("distribution"), layout.Figures("AIC", "aic"), layout.Figures("log-\nlikelihood", "loglik"), layout.Figures("mean, "+f.Unit, "mean"),
		layout.Figures("cv", "cv")}}
	for _, law := range f.Laws {
		t.Add(layout.Word(law.Law.String()), layout.Number(2*float64(len(law.Parameters))-2*f.logLik(law), 2), layout.Number(f.logLik(law), 3), layout.Value(figures4(f.inUnit(law.Mean).Mean), f.inUnit(law.Mean)).In(f.Unit),
			layout.Shown(figures4(law.CV), law.CV))
	}
	return layout.Section{Key: "fit", Heading: "The distributions, the one that describes them best first", Table: t}
}

// parameterTable lists the parameters of each law with their intervals.
func (f *Fits) parameterTable() layout.Section {
	t := &layout.Table{Columns: []layout.Column{layout.Words("distribution"), layout.Words("parameter"), layout.Figures("value", "value"), layout.Aside("from"), layout.Aside("to")}}
	for _, law := range f.Laws {
		for i, name := range law.Law.Parameters() {
			iv := f.parameter(law, i)
			if name == "mean" || name == "scale" {
				name += ", " + f.Unit
			}
			t.Add(layout.Word(law.Law.String()), layout.Word(name), layout.Value(figures4(iv.Mean), iv), layout.Word(figures4(iv.Low)), layout.Word(figures4(iv.High)))
		}
	}
	return layout.Section{Key: "parameter", Heading: "Their parameters, with intervals at " + layout.Confidence(f.Confidence), Table: t}
}

// parameter is one of a law's, lengths of time in the unit of the file.
func (f *Fits) parameter(law *lifedata.Fit, i int) interval {
	iv := law.Parameters[i]
	switch law.Law.Parameters()[i] {
	case "mean", "scale":
		return f.inUnit(iv)
	case "mu":
		shift := math.Log(f.UnitSeconds)
		iv.Mean, iv.Low, iv.High = iv.Mean-shift, iv.Low-shift, iv.High-shift
	}
	return iv
}

func (f *Fits) inUnit(iv interval) interval {
	iv.Mean, iv.Low, iv.High = iv.Mean/f.UnitSeconds, iv.Low/f.UnitSeconds, iv.High/f.UnitSeconds
	return iv
}

// lineWords is the law as a line file takes it.
func (f *Fits) lineWords(law *lifedata.Fit) string {
	mean := figures4(f.inUnit(law.Mean).Mean) + " " + f.Unit
	switch law.Law {
	case lifedata.Exponential:
		return "{exponential: " + mean + "}"
	case lifedata.Weibull:
		return fmt.Sprintf("{weibull: {shape: %s, scale: %s %s}}", figures4(law.Parameters[0].Mean), figures4(f.inUnit(law.Parameters[1]).Mean), f.Unit)
	case lifedata.Lognormal:
		return fmt.Sprintf("{lognormal: {mean: %s, cv: %s}}", mean, figures4(law.CV))
	case lifedata.Gamma:
		return fmt.Sprintf("{gamma: {mean: %s, cv: %s}}", mean, figures4(law.CV))
	}
	return "it takes no log-logistic distribution; lognormal is the nearest"
}

// figures4 prints a number to four figures.
func figures4(x float64) string {
	if math.IsInf(x, 0) || math.IsNaN(x) {
		return layout.None
	}
	if size := math.Abs(x); size >= 1e4 && size < 1e9 {
		return layout.Fixed(x, 0)
	}
	return fmt.Sprintf("%.4g", x)
}

func boundsIn(iv interval, unit string) string {
	if !iv.Assessed() {
		return ""
	}
	if unit != "" {
		unit = " " + unit
	}
	return fmt.Sprintf(" (%s to %s%s)", figures4(iv.Low), figures4(iv.High), unit)
}

type jsonFits struct {
	Schema      int       `json:"schema"`
	CommandLine string    `json:"command_line"`
	Unit        string    `json:"unit"`
	Fits        []jsonFit `json:"fits"`
}

type jsonFit struct {
	Where    string    `json:"where"`
	Cause    string    `json:"cause"`
	Events   int       `json:"events"`
	Censored int       `json:"censored"`
	Clock    number    `json:"clock_seconds"`
	Laws     []jsonLaw `json:"laws"`
	Chosen   string    `json:"chosen"`
	Mean     number    `json:"mean_seconds"`
	CV       number    `json:"cv"`
}

// jsonLaw has its parameters, and its likelihood, in the unit of the file.
type jsonLaw struct {
	Law        string                  `json:"law"`
	Parameters map[string]number       `json:"parameters"`
	Intervals  map[string]jsonInterval `json:"intervals"`
	LogLik     number                  `json:"loglik"`
	AIC        number                  `json:"aic"`
	Mean       number                  `json:"mean_seconds"`
	CV         number                  `json:"cv"`
}

func fitJSON(w io.Writer, f *Fits) error {
	events := lifedata.Events(f.Sample)
	one := jsonFit{Cause: f.File, Events: events, Censored: len(f.Sample) - events, Clock: number(lifedata.Total(f.Sample)), Chosen: f.Laws[0].Law.String(),
		Mean: number(f.Laws[0].Mean.Mean), CV: number(f.Laws[0].CV)}
	for _, law := range f.Laws {
		loglik := f.logLik(law)
		j := jsonLaw{Law: law.Law.String(), Parameters: map[string]number{}, Intervals: map[string]jsonInterval{}, LogLik: number(loglik),
			AIC: number(2*float64(len(law.Parameters)) - 2*loglik), Mean: number(law.Mean.Mean), CV: number(law.CV)}
		for i, name := range law.Law.Parameters() {
			j.Parameters[name], j.Intervals[name] = number(f.parameter(law, i).Mean), jsonOf(f.parameter(law, i))
		}
		one.Laws = append(one.Laws, j)
	}
	return writeJSON(w, jsonFits{1, f.Origin.Line, f.Unit, []jsonFit{one}})
}

// logLik is the likelihood of the times in the unit of the file.
func (f *Fits) logLik(law *lifedata.Fit) float64 {
	return law.LogLik + float64(lifedata.Events(f.Sample))*math.Log(f.UnitSeconds)
}
