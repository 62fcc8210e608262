package reports

// forecastSchema is the number of the layout below; it rises when a key changes its meaning or goes.
const forecastSchema = 1

// jsonForecast is a forecast in JSON. Rates are cartons/h over scheduled time, counts cartons per shift, shares of 1, and
// nothing is rounded: ideal_per_shift = good_per_shift.mean + the sum of losses[].cartons.
type jsonForecast struct {
	Schema           int           `json:"schema"`
	Title            string        `json:"title"`
	Version          string        `json:"version"`
	File             string        `json:"file,omitempty"`
	Changes          []string      `json:"changes,omitempty"`
	Repeat           string        `json:"repeat,omitempty"`
	Seed             uint64        `json:"seed"`
	Replications     int           `json:"shifts"`
	Interrupted      bool          `json:"interrupted"`
	Confidence       float64       `json:"confidence"`
	Setting          float64       `json:"setting_per_hour"`
	ScheduledSeconds float64       `json:"scheduled_seconds"`
	GoodRate         jsonFigure    `json:"good_rate"`
	GoodPerShift     jsonSpread    `json:"good_per_shift"`
	IdealPerShift    number        `json:"ideal_per_shift"`
	Target           *jsonTarget   `json:"target,omitempty"`
	SharesOf         string        `json:"bottleneck_shares_of"` // time or cycles
	SettingShare     number        `json:"setting_share"`
	SettingInterval  jsonInterval  `json:"setting_share_interval"`
	MasterShare      number        `json:"master_share"`
	MasterInterval   jsonInterval  `json:"master_share_interval"`
	Stations         []jsonStation `json:"stations"`
	Losses           []jsonLoss    `json:"losses"`
	Stops            []jsonStop    `json:"stops"`
	Buffers          []jsonBuffer  `json:"buffers"`
	Attendants       int           `json:"attendants"`
	CrewLoad         number        `json:"crew_load"`
	CrewLoadInterval jsonInterval  `json:"crew_load_interval"`
	Indicators       jsonOEE       `json:"indicators"`
	Steady           *jsonSteady   `json:"steady,omitempty"`
	Warnings         []jsonWarning `json:"warnings"`
	SafetyCaution    string        `json:"caution"`
}

// jsonOEE holds the indicators of ISO 22400-2 over planned busy time, shares of 1.
type jsonOEE struct {
	Availability  number `json:"availability"`
	Effectiveness number `json:"effectiveness"`
	Quality       number `json:"quality"`
	OEE           number `json:"oee"`
}

type jsonFigure struct {
	jsonInterval
	Warnings []string `json:"warnings,omitempty"`
}

type jsonSpread struct {
	jsonInterval
	P10      number   `json:"p10"`
	P50      number   `json:"p50"`
	P90      number   `json:"p90"`
	SD       number   `json:"sd"`
	Warnings []string `json:"warnings,omitempty"`
}

type jsonTarget struct {
	PerShift number       `json:"per_shift"`
	Chance   jsonInterval `json:"chance"`
	Warnings []string     `json:"warnings,omitempty"`
}

type jsonStation struct {
	Name               string                  `json:"name"`
	Kind               string                  `json:"kind"`
	Units              int                     `json:"units"`
	Shares             map[string]number       `json:"shares"`
	ShareIntervals     map[string]jsonInterval `json:"share_intervals"`
	BottleneckShare    number                  `json:"bottleneck_share"`
	BottleneckInterval jsonInterval            `json:"bottleneck_share_interval"`
	Acts               number                  `json:"acts"`
	Misses             number                  `json:"misses"`
	Rejects            number                  `json:"rejects"`
	Waits              []jsonWait              `json:"waits"`
	Warnings           []string                `json:"warnings,omitempty"`
}

type jsonWait struct {
	State   string `json:"state"`
	Where   string `json:"where"`
	Cause   string `json:"cause"`
	Minutes number `json:"minutes"`
}

type jsonLoss struct {
	Where    string       `json:"where"`
	Cause    string       `json:"cause"`
	Cartons  number       `json:"cartons"`
	Interval jsonInterval `json:"cartons_interval"`
	Total    int64        `json:"total"`
	Warnings []string     `json:"warnings,omitempty"`
}

type jsonStop struct {
	Where           string       `json:"where"`
	Cause           string       `json:"cause"`
	Reload          bool         `json:"reload"`
	PerShift        jsonInterval `json:"per_shift"`
	Seen            int64        `json:"seen"`
	AwaitingMinutes number       `json:"awaiting_minutes"`
	ClearingMinutes number       `json:"clearing_minutes"`
	CartonsLost     number       `json:"cartons_lost"`
	Warnings        []string     `json:"warnings,omitempty"`
}

type jsonBuffer struct {
	Before          string       `json:"before"`
	Capacity        *int         `json:"capacity"` // null for no limit
	MeanContent     jsonInterval `json:"mean_content"`
	EmptyShare      number       `json:"empty_share"`
	FullShare       number       `json:"full_share"`
	MeanWaitSeconds number       `json:"mean_wait_seconds"`
	WaitedShare     number       `json:"waited_share"`
	Through         number       `json:"through"`
	Warnings        []string     `json:"warnings,omitempty"`
}

type jsonSteady struct {
	LengthSeconds      float64 `json:"length_seconds"`
	WarmUpSeconds      float64 `json:"warm_up_seconds"`
	WarmUpGiven        bool    `json:"warm_up_given"`
	Batches            int     `json:"batches"`
	BatchLengthSeconds float64 `json:"batch_length_seconds"`
}
