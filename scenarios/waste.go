package scenarios

import "dwellcast/stations"

// Waste is the mean number of cartons per shift that were made, or begun, and are not good: rejected or scrapped.
func (r *Shifts) Waste() float64 {
	if r.Done() == 0 {
		return 0
	}
	return float64(r.sample.total.Flow[stations.Bad]+r.sample.total.Flow[stations.Scrapped]) / float64(r.Done())
}
