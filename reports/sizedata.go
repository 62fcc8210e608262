package reports

import (
	"io"

	"dwellcast/reports/layout"
	"dwellcast/scenarios/decisions"
)

// sizingSchema is the number of the layout below.
const sizingSchema = 1

// jsonSizing holds a sizing: cartons a year, money in the study's currency, shares of 1.
type jsonSizing struct {
	jsonDecision
	Currency     string           `json:"currency"`
	DemandMean   number           `json:"demand_per_year"`
	DemandLow    number           `json:"demand_p05"`
	DemandHigh   number           `json:"demand_p95"`
	Wanted       float64          `json:"wanted_chance"`
	Sells        string           `json:"sells"` // all or demand
	Discount     float64          `json:"discount_rate"`
	Against      string           `json:"against"`
	Recommended  *string          `json:"recommended"` // null where none makes the demand
	Next         *string          `json:"next"`
	RankedBy     string           `json:"ranked_by"` // annual_cost or annual_worth
	BestReach    jsonReach        `json:"best_reachable"`
	Candidates   []jsonSized      `json:"candidates"`
	RestsOn      []jsonAssumption `json:"assumptions"`
	Ranges       jsonRanges       `json:"ranges"`
	WarningsList []jsonWarning    `json:"warnings"`
}

type jsonReach struct {
	Name    string       `json:"name"`
	Setting number       `json:"setting_per_hour"`
	Year    jsonInterval `json:"good_per_year"`
	Chance  jsonInterval `json:"chance"`
}

type jsonSized struct {
	Name              string       `json:"name"`
	Changes           []string     `json:"changes"`
	Lines             int          `json:"lines"`
	ShiftsADay        int          `json:"shifts_per_day"`
	Setting           number       `json:"setting_per_hour"`
	Raised            bool         `json:"setting_raised"`
	NetHours          number       `json:"net_hours"`
	GoodPerShift      jsonInterval `json:"good_per_shift"`
	ShiftSD           number       `json:"good_per_shift_sd"`
	GoodPerYear       jsonInterval `json:"good_per_year"`
	YearSD            number       `json:"good_per_year_sd"`
	Chance            jsonInterval `json:"chance"`
	OwnChance         jsonInterval `json:"chance_at_own_setting"`
	Verdict           string       `json:"verdict"`           // makes, short or open
	Refused           string       `json:"refused,omitempty"` // the limits that it breaks at its setting
	Needed            *jsonNeeded  `json:"needed_setting"`
	LinesNeeded       *int         `json:"lines_needed"` // null above 100
	Spare             jsonInterval `json:"spare_share"`
	Sold              jsonInterval `json:"sold_per_year"`
	Waste             jsonInterval `json:"waste_per_year"`
	Price             number       `json:"price"`
	Life              int          `json:"life_years"`
	AnnualCost        jsonInterval `json:"equivalent_annual_cost"`
	CostPerThousand   jsonInterval `json:"cost_per_thousand_good"`
	AnnualWorth       jsonInterval `json:"equivalent_annual_worth"`
	NetPresentValue   jsonInterval `json:"net_present_value"`
	SimplePayback     number       `json:"simple_payback_years"`
	DiscountedPayback number       `json:"discounted_payback_years"`
	RateOfReturn      number       `json:"internal_rate_of_return"`
	DominatedBy       *string      `json:"dominated_by"`
}

type jsonNeeded struct {
	Found   bool         `json:"found"`
	Setting number       `json:"setting_per_hour"` // where not found, the one that makes most
	At      jsonInterval `json:"interval"`
	Chance  jsonInterval `json:"chance"`
	Most    number       `json:"highest_looked_at"`
	MostWhy string       `json:"highest_why"`
}

func sizingJSON(w io.Writer, z *decisions.Sizing, basis Basis, o Origin) error {
	d := z.Spec.Demand
	reach := z.Reach()
	out := jsonSizing{
		jsonDecision: o.json(sizingSchema, z.Title, z.Seed, z.Spec.Replications, z.Spec.Confidence),
		Currency:     z.Spec.Currency, DemandMean: number(d.Mean()), DemandLow: number(d.Quantile(0.05)), DemandHigh: number(d.Quantile(0.95)),
		Wanted: z.Spec.Chance, Sells: "demand", Discount: z.Spec.Discount, Against: z.Spec.Against,
		Recommended: nameAt(z, z.Best), Next: nameAt(z, z.Next), RankedBy: "annual_cost",
		BestReach: jsonReach{reach.Of.Name, number(reach.Setting), jsonOf(reach.Year), jsonOf(reach.Chance)}, RestsOn: basis.json(), Ranges: rangesJSON(&z.Ranges), WarningsList: jsonWarnings(z.Warnings),
	}
	if z.Spec.SellsAll {
		out.Sells = "all"
	}
	if z.ByWorth() {
		out.RankedBy = "annual_worth"
	}
	for i := range z.Candidates {
		out.Candidates = append(out.Candidates, jsonSizedOf(&z.Candidates[i]))
	}
	return writeJSON(w, out)
}

func nameAt(z *decisions.Sizing, i int) *string {
	if i < 0 {
		return nil
	}
	return &z.Candidates[i].Name
}

func jsonSizedOf(c *decisions.Sized) jsonSized {
	k := jsonSized{
		Name: c.Name, Changes: append([]string{}, c.Changes...), Lines: c.Lines, ShiftsADay: c.Calendar.Shifts, Setting: number(c.Setting), Raised: c.Raised,
		NetHours: number(c.NetHours), GoodPerShift: jsonOf(c.PerShift), ShiftSD: number(c.ShiftSD), GoodPerYear: jsonOf(c.Year), YearSD: number(c.YearSD),
		Chance: jsonOf(c.Chance), OwnChance: jsonOf(c.Own), Verdict: c.Verdict.String(), Refused: beyondWords(c), Spare: jsonOf(c.Spare), Sold: jsonOf(c.Sold), Waste: jsonOf(c.WasteCartons),
		Price: number(float64(c.Lines) * c.Price), Life: c.Life, AnnualCost: jsonOf(c.AnnualCost), CostPerThousand: jsonOf(c.CostPerThousand),
		AnnualWorth: jsonOf(c.AnnualWorth), NetPresentValue: jsonOf(c.NetPresentValue), SimplePayback: number(c.SimplePayback),
		DiscountedPayback: number(c.DiscountedPayback), RateOfReturn: number(c.RateOfReturn),
	}
	if c.LinesNeeded > 0 {
		k.LinesNeeded = &c.LinesNeeded
	}
	if c.DominatedBy != "" {
		k.DominatedBy = &c.DominatedBy
	}
	if n := c.Needed; n != nil {
		k.Needed = &jsonNeeded{n.Found, number(n.Setting), jsonOf(n.At), jsonOf(n.Chance), number(n.Most), n.MostWhy}
	}
	return k
}

// demandFacts are what is wanted and what is recommended, for data.
func demandFacts(z *decisions.Sizing) layout.Section {
	facts := []layout.Fact{fact("mean", layout.Number(z.Spec.Demand.Mean(), 0).In("cartons/year")), fact("wanted_chance", layout.Share(z.Spec.Chance))}
	if z.Best >= 0 {
		facts = append(facts, fact("recommended", layout.Word(z.Candidates[z.Best].Name)))
	}
	return layout.Facts("demand", "", facts...)
}
