package motion_test

import (
	"testing"
	"time"

	"dwellcast/stations/motion"
)

func TestTmpPallet(t *testing.T) {
	for _, c := range [][4]int{{48, 40, 12, 8}, {48, 40, 13, 10}, {48, 40, 11, 9}, {1200, 800, 400, 300}, {1200, 1000, 380, 285}, {1200, 1000, 137, 95},
		{1200, 800, 90, 70}, {48, 40, 16, 12}, {48, 40, 7, 5}, {48, 40, 5, 3}} {
		at := time.Now()
		n, err := motion.CasesPerLayer(c[0], c[1], c[2], c[3])
		t.Log(c, n, err, c[0]*c[1]/c[2]/c[3], time.Since(at))
	}
}
