package scenarios

import (
	"dwellcast/scenarios/document"
	"dwellcast/stations"
)

// readMaterials reads what runs down at a station and is reloaded: blanks, any other material, and the places of a pallet.
func (r *lineReader) readMaterials(d *draft) {
	named := map[string]bool{}
	add := func(n *document.Node, m stations.Material) {
		if named[m.Name] && m.Name != "" {
			r.p.Add(n, "is the second material of "+d.Name+" called "+m.Name, "give each its own name")
		}
		named[m.Name] = true
		d.Materials = append(d.Materials, m)
	}
	if d.Kind == stations.Erect {
		if n := d.fields.Take("blanks"); n != nil {
			f := n.Map(&r.p)
			add(n, r.readMaterial(f, "blanks"))
			f.Done()
		}
	}
	for _, n := range d.fields.Take("materials").List(&r.p) {
		f := n.Map(&r.p)
		add(n, r.readMaterial(f, r.name(f.Require("name", "glue"))))
		f.Done()
	}
	if d.Kind == stations.Offload || d.Kind == stations.Machine {
		if n := d.fields.Take("pallet"); n != nil {
			add(n, r.readPallet(n))
		}
	}
}

// readMaterial reads how much of a material there is, and how it is reloaded.
func (r *lineReader) readMaterial(f *document.Fields, name string) stations.Material {
	one := document.Limit{Min: "1", Hint: "write 1 or more"}
	m := stations.Material{Name: name, Unattended: !r.boolOr(f.Take("attendant"), true)}
	m.Holds = f.Require("holds", "500").Count(&r.p, one)
	low := f.Take("low")
	m.Low = low.Count(&r.p)
	m.Reload = f.Require("reload", "400").Count(&r.p, one)
	m.Takes = r.time(f.Require("takes", "35 s"), upTo(longestWork))
	if low != nil && m.Holds > 0 && m.Low >= m.Holds {
		r.p.Add(low.Assumed(&r.p), "is not below what it holds", "a reload is called for when it has run down to low")
	}
	return m
}

// readPallet reads a pallet: each place takes so many cartons, and is free again after the change.
func (r *lineReader) readPallet(n *document.Node) stations.Material {
	f := n.Map(&r.p)
	every := f.Require("every", "120 cartons").Count(&r.p, document.Limit{Min: "1", Hint: "write how many cartons make a pallet"},
		document.Limit{Max: "100000"})
	takes := r.time(f.Require("takes", "25 s"), upTo(longestWork))
	by := f.Take("by").OneOf(&r.p, "machine", "attendant")
	places := 1
	if p := f.Take("places"); p != nil {
		places = p.Count(&r.p, document.Limit{Min: "1"}, document.Limit{Max: "100"})
	}
	f.Done()
	return stations.Material{Name: "empty pallet", Holds: every * places, Low: every * (places - 1), Reload: every, Takes: takes, Unattended: by != "attendant"}
}
