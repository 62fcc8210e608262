package stats

import "encoding/json"

// keptMoments is how Moments are written down.
type keptMoments struct {
	N    int     `json:"n"`
	Mean float64 `json:"mean"`
	M2   float64 `json:"m2"`
}

// MarshalJSON writes the accumulator so that reading it back goes on exactly where it was.
func (m Moments) MarshalJSON() ([]byte, error) {
	return json.Marshal(keptMoments{m.n, m.mean, m.m2})
}

// UnmarshalJSON reads what MarshalJSON wrote.
func (m *Moments) UnmarshalJSON(data []byte) error {
	var k keptMoments
	if err := json.Unmarshal(data, &k); err != nil {
		return err
	}
	*m = Moments{n: k.N, mean: k.Mean, m2: k.M2}
	return nil
}
