package paper_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"tarpside/board/paper"
	"tarpside/model/trail"
)

func TestEachWhoWalksHasASlipAndTheSlipsAddUp(t *testing.T) {
	pic := demo(t, 60)
	o := options(60)
	for _, p := range paper.All(pic, o) {
		if strings.HasPrefix(p.File, "trail-slips") {
			t.Error("slips without a party")
		}
	}
	o.Party = trail.Party{Trip: trail.Trip{Season: trail.Winter, Night: true, Km: 2.4}, People: []trail.Walker{{ID: "M02"}, {ID: "M03", Limit: 25}}}
	o.Party.AddNoName()
	all := pages(t, printed(t, find(t, paper.All(pic, o), "trail-slips.pdf")))
	_, lines := o.Party.Lines(pic.State)
	load := trail.Packs(lines, o.Party.Carriers(pic.State.Dept))
	if len(all) != 3 {
		t.Fatalf("%d pages for three who walk", len(all))
	}
	lb := 0.0
	for i, p := range load.Packs {
		lb += p.Lb
		page := flat(all[i])
		if !strings.Contains(page, p.Name) || !strings.Contains(page, fmt.Sprintf("%d lb", trail.UpLb(p.Lb))) {
			t.Errorf("the slip of %s says %q", p.Name, page)
		}
		for _, x := range p.Parts {
			if name := lines[x.Line].Name; !strings.Contains(page, name) {
				t.Errorf("%s is not on the slip of %s", name, p.Name)
			}
		}
	}
	if !strings.Contains(flat(all[1]), "limit 25 lb") || !strings.Contains(flat(all[2]), "Helper 1") {
		t.Error("the agreed limit or the one without a name is missing")
	}
	if math.Abs(lb-load.Lb) > 0.01 {
		t.Errorf("the slips weigh %v lb, the load %v", lb, load.Lb)
	}
	inside(t, "trail-slips.pdf", printed(t, find(t, paper.All(pic, o), "trail-slips.pdf")), o.Sheet)
}
