package board_test

import (
	"reflect"
	"testing"

	"tarpside/model/trail"
)

func TestAPartyIsKeptForItsSceneWithoutThePatientsWeight(t *testing.T) {
	b := newTablet(t, "A")
	p := trail.Party{Trip: trail.Trip{Season: trail.Winter, Km: 2.4, PatientLb: 223}, People: []trail.Walker{{ID: "M02", Limit: 25}}, Rig: map[string]int{"S44-002": 5}}
	if err := b.SetParty("one", p); err != nil {
		t.Fatal(err)
	}
	p.Trip.PatientLb = 0
	if got := b.Party("one"); !reflect.DeepEqual(got, p) {
		t.Errorf("kept %+v, want %+v", got, p)
	}
	if got := b.Party("two"); !reflect.DeepEqual(got, trail.Party{}) {
		t.Errorf("another scene has %+v", got)
	}
	if err := b.SetSetting("party:one", `{"people":3`); err != nil {
		t.Fatal(err)
	}
	if got := b.Party("one"); !reflect.DeepEqual(got, trail.Party{}) {
		t.Errorf("what cannot be read gives %+v", got)
	}
}
