package motion_test

import (
	"math"
	"testing"

	"dwellcast/stations/motion"
)

func TestPistonStroke(t *testing.T) {
	piston := motion.PistonOfBore(0.1, 0.3)
	near(t, "bore", piston.Bore(), 0.1, 1e-15)
	stroke, err := piston.Stroke(piston.Capacity())
	if err != nil {
		t.Fatal(err)
	}
	near(t, "stroke of a full cylinder", stroke, 0.3, 1e-12)
	for _, dose := range []float64{piston.Capacity() * 1.001, 0, -1, math.NaN()} {
		if _, err := piston.Stroke(dose); err == nil {
			t.Errorf("a dose of %g m3 in a cylinder of %g m3 must be refused", dose, piston.Capacity())
		}
	}
}

// TestFlowsIntegrateToTheDose: peak flow over Cv times the time of the move is the dose.
func TestFlowsIntegrateToTheDose(t *testing.T) {
	law := motion.Cycloidal()
	cam := camOf(t, axis("piston", segment(motion.Rise, 200, 350, 0.1, law), segment(motion.Return, 10, 190, 0.1, law)))
	flows := motion.Piston{Area: 0.01}.Flows(cam, 3)
	near(t, "dispensed", flows.Dispense.Value/2*1.5, 0.001, 1e-15)
	near(t, "drawn", flows.Draw.Value/2*1.25, 0.001, 1e-15)
	near(t, "dispense peak", float64(flows.Dispense.At), 100, 1e-9)
}

// TestTolerableDeficiency: the borders of the table in OIML R 87 (2004); the percentages meet the fixed values there.
func TestTolerableDeficiency(t *testing.T) {
	for declared, want := range map[float64]float64{
		5: 0.5, 50: 4.5, 51: 4.5, 100: 4.5, 101: 4.6, 200: 9, 250: 9, 300: 9, 301: 9.1, 500: 15, 1000: 15, 1001: 15.1, 10000: 150, 15000: 150, 20000: 200,
	} {
		got, err := motion.TolerableDeficiency(declared)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "tolerable deficiency", got, want, 1e-12)
	}
	for _, declared := range []float64{0, -5, 60000, math.NaN()} {
		if got, err := motion.TolerableDeficiency(declared); err == nil {
			t.Errorf("declared %g gives %g", declared, got)
		}
	}
}

// TestGiveaway: with the least giveaway exactly the wanted share falls short.
func TestGiveaway(t *testing.T) {
	d := motion.Dosing{Declared: 1892.7, Spread: 12}
	d.Mean = d.Declared + d.LeastGiveaway(28.4, 1e-4)
	near(t, "share short", d.ShareShort(28.4), 1e-4, 1e-9)
	near(t, "giveaway", d.Giveaway(), 16.228, 1e-3) // reference table
	if g := (motion.Dosing{Declared: 1000, Spread: 1}).LeastGiveaway(15, 0.025); g != 0 {
		t.Errorf("a dose that scatters little needs no giveaway, got %g", g)
	}
	near(t, "no spread", motion.Dosing{Declared: 10, Mean: 9}.ShareShort(0.5), 1, 0)
	if _, err := motion.SampleCorrectionFactor(1); err == nil {
		t.Error("a sample of one has no spread")
	}
}

// TestDrive in whole numbers: 1 m a turn, 1 kg m2, 39.478 kg reflect to 1 + 39.478/(2 pi)^2 = 2 kg m2.
func TestDrive(t *testing.T) {
	drive := motion.Drive{TravelPerTurn: 1, Inertia: 1, Mass: 4 * math.Pi * math.Pi, PulsesPerTurn: 1000, RatedSpeed: 240, RatedTorque: 50, PeakTorque: 200}
	near(t, "inertia", drive.ReflectedInertia(), 2, 1e-12)
	cam := feed(t, 1, 180, motion.Cycloidal()) // Cv = 2, Ca = 2 pi, Ca rms = 2 pi/sqrt 2
	l := drive.Load(cam, 2)                    // one turn in one second
	near(t, "speed", l.Speed, 120, 1e-9)
	near(t, "acceleration", l.Acceleration, 2*math.Pi*2*math.Pi, 1e-9)
	near(t, "torque", l.Torque, 2*2*math.Pi*2*math.Pi, 1e-9)
	near(t, "rms torque over the whole revolution", l.TorqueRMS, l.Torque/2, 1e-9)
	near(t, "pulses", l.PulsesPerSecond, 2000, 1e-9)
	near(t, "speed share", l.SpeedShare, 0.5, 1e-12)
	near(t, "highest share", l.HighestShare(), l.Torque/2/50, 1e-12)
	near(t, "unknown rating", motion.Drive{TravelPerTurn: 1}.Load(cam, 2).HighestShare(), 0, 0)
}

func TestPallet(t *testing.T) {
	for _, bad := range [][4]int{{0, 1, 1, 1}, {48, 40, -1, 8}, {5000, 5000, 1, 1}, {6000, 10, 10, 10}} {
		if n, err := motion.CasesPerLayer(bad[0], bad[1], bad[2], bad[3]); err == nil {
			t.Errorf("%v gives %d", bad, n)
		}
	}
	if n, _ := motion.CasesPerLayer(10, 10, 20, 5); n != 0 {
		t.Errorf("a case longer than the pallet: %d fit", n)
	}
	near(t, "fill", motion.LayerFill(8, 1200, 800, 400, 300), 1, 1e-12)
}
