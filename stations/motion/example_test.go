package motion_test

import (
	"fmt"

	"dwellcast/stations/motion"
)

// How fast a line with a 240 degree stand may be set, for a seal cycle of 1.42 s and for 0.1 s more dwell.
func ExampleHighestAllowed() {
	for _, needed := range []motion.Seconds{1.42, 1.52} {
		limit := motion.NewDwellLimit("seal dwell", motion.Master{}, 120, needed)
		highest, err := motion.HighestAllowed(limit, 100, 3000)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.2f s allow %.0f cartons/h\n", float64(needed), float64(highest.Setting))
	}
	// Output:
	// 1.42 s allow 1690 cartons/h
	// 1.52 s allow 1579 cartons/h
}

// A conveyor that moves one pitch in the first 110 degrees of a revolution of 2 s.
func ExampleNewCam() {
	law, err := motion.LawByName("modified sine")
	if err != nil {
		fmt.Println(err)
		return
	}
	conveyor, problems := motion.NewCam(motion.Axis{Name: "conveyor", Segments: []motion.Segment{
		{Name: "index", Kind: motion.Index, From: 0, To: 110, Travel: 0.1524, Law: law},
	}})
	for _, p := range problems {
		fmt.Println(p)
	}
	peaks := conveyor.Peaks(2)
	fmt.Printf("peak speed %.3f m/s at %.0f deg\n", peaks.Velocity.Value, float64(peaks.Velocity.At))
	fmt.Printf("peak acceleration %.2f m/s2 at %.2f deg\n", peaks.Acceleration.Value, float64(peaks.Acceleration.At))
	// Output:
	// peak speed 0.439 m/s at 55 deg
	// peak acceleration 2.26 m/s2 at 13.75 deg
}

// A misspelt law is answered with the nearest name.
func ExampleLawByName() {
	_, err := motion.LawByName("modifed sin")
	fmt.Println(err)
	// Output: unknown motion law "modifed sin" (nearest: "modified sine")
}
