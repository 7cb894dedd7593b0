package trail_test

import (
	"encoding/json"
	"regexp"
	"testing"

	"tarpside/model"
	"tarpside/model/sum"
	"tarpside/model/trail"
)

var nonsense = regexp.MustCompile(`NaN|Inf|-\d+(\.\d+)? (min|h|lb|qt|people)|e\+\d`)

// Whatever was kept of a party, its figures are figures.
func FuzzAPartyThatWasKept(f *testing.F) {
	for _, s := range []string{`{}`, `{"trip":{"Season":"winter","Km":2.4,"ClimbM":240,"Hours":5,"Night":true},"people":[{"id":"M02"},{"id":"helper-1","limit":20}],"chosen":{"S44-022":3,"S44-001":-4}}`,
		`{"trip":{"Km":1e308,"ClimbM":-1e308,"Hours":1e300},"people":[{"id":"","limit":1e308},{"id":"x","limit":-1}],"chosen":{"S44-010":99999999}}`, `{"list":"Trail carry-out","rig":{"S44-001":-1}}`} {
		f.Add([]byte(s))
	}
	s := demo(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		var p trail.Party
		if json.Unmarshal(data, &p) != nil || len(p.People) > 100 {
			return
		}
		_, lines := p.Lines(s)
		load := trail.Packs(lines, p.Carriers(s.Dept))
		drops, over := trail.Drops(lines, load.Limit)
		in, _ := p.Trip.In()
		out, _ := p.Trip.Out()
		changes, _ := p.Trip.Changes()
		water, _ := p.Trip.Water(len(p.People))
		all := []sum.Answer{load.Answer(), trail.Leaving(drops, over), in, out, changes, water, p.Trip.Bearers(len(p.People)),
			trail.BearerLoad(p.Trip.PatientLb, trail.Package(s, lines), 6, p.Trip.Path, 0)}
		for _, pack := range load.Packs {
			all = append(all, pack.Answer())
		}
		for _, a := range all {
			if nonsense.MatchString(a.Text) {
				t.Fatalf("%s: %q", a.Name, a.Text)
			}
		}
		if _, verified := trail.Verify(trail.Eyes(s, lines), p.Rig, p.First, p.Second); verified && p.First == p.Second {
			t.Fatal("one person verified the load")
		}
		trail.Tallies(s, model.Place{Kind: model.At, Name: "Trail"}, "", nil)
	})
}
