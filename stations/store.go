package stations

import (
	"dwellcast/sim"
	"dwellcast/sim/random"
)

// store is a unit's stock of a material, such as the blanks in its magazine.
type store struct {
	unit   *unit
	spec   *Material
	why    Reason
	takes  random.Source
	level  int
	called bool
	dry    *stand       // the unit stands because the store is empty
	wake   *sim.Process // to wake when it is full again
}

func newStore(u *unit, spec *Material, why Reason) store {
	return store{unit: u, spec: spec, why: why, takes: random.NewSource(spec.Takes, random.Key(u.name, "reload "+spec.Name))}
}

func (m *store) reset() {
	m.takes.Reset(m.unit.sim.seed, m.unit.sim.replication)
	m.level, m.called, m.dry = m.spec.Holds, false, nil
}

// use takes n pieces, and calls for a reload when the level is low.
func (m *store) use(n int) {
	m.level = max(0, m.level-n)
	m.callIfLow()
}

func (m *store) callIfLow() {
	if m.called || m.level > m.spec.Low {
		return
	}
	m.called = true
	call := &sim.Call{Work: m.takes.Next(), Done: m.reloaded}
	if m.spec.Unattended {
		m.unit.sim.machines.Call(call)
	} else {
		call.Reaction = m.unit.react.Next()
		m.unit.sim.crew.Call(call)
	}
}

func (m *store) reloaded() {
	m.called = false
	m.level = min(m.spec.Holds, m.level+m.spec.Reload)
	if s := m.dry; s != nil {
		m.dry = nil
		m.unit.endStand(s, m.wake)
	}
	m.callIfLow()
}

// lacking makes the unit stand if the store is empty, until it is reloaded.
func (m *store) lacking(wake *sim.Process) bool {
	if m.level > 0 {
		return false
	}
	if m.dry == nil {
		m.wake = wake
		m.dry = m.unit.beginStand(m.why, true)
	}
	return true
}
