package stations

import "testing"

// TestEveryReasonHasItsRow: a kind of reason without a row of its own fails here, and so does a kind of station without a word.
func TestEveryReasonHasItsRow(t *testing.T) {
	if len(reasonForms) != int(numReasons) {
		t.Fatalf("%d rows for %d kinds of reason", len(reasonForms), numReasons)
	}
	for kind, form := range reasonForms {
		if form.nature == 0 {
			t.Errorf("the kind of reason %d has no row", kind)
		}
		if form.nature == account && form.what == "" || form.nature == built && form.what == "" {
			t.Errorf("the kind of reason %d has no words", kind)
		}
	}
	for kind := range numKinds {
		if kind.String() == "" {
			t.Errorf("the kind of station %d has no word", kind)
		}
	}
}
