package model_test

import (
	"fmt"
	"testing"

	"tarpside/model"
	"tarpside/model/modeltest"
)

// tables are the tables of a board as lines of text.
func tables(s *model.State) map[string][]string {
	out := map[string][]string{}
	add := func(table, format string, args ...any) { out[table] = append(out[table], fmt.Sprintf(format, args...)) }
	id := func(line int) string { return s.Dept.Items[line].ID }
	for _, r := range s.Where() {
		add("where", "%s %d %s %s", id(r.Line), r.Quantity, r.Place, r.Holder)
	}
	for _, r := range s.EndState() {
		add("end", "%s %d %s: %s", id(r.Line), r.Quantity, r.Place, r.Words)
	}
	for _, r := range s.Ready() {
		add("ready", "%s %s full %d least %d now %d enough %v", r.Rig, r.Family, r.Full, r.LeastUsable, r.Now, r.Enough)
	}
	for _, r := range s.Leaving("R1") {
		add("leaving", "%s %d %s", id(r.Line), r.Quantity, r.Place)
	}
	for _, r := range s.BringBack() {
		add("back", "%s %d %s %s", id(r.Line), r.Quantity, r.Place, r.Holder)
	}
	for _, r := range s.Checkpoints() {
		add("checkpoints", "%s %s lines %d pieces %d lb %g", r.Rig, r.Place, r.Lines, r.Pieces, r.WeightLb)
	}
	return out
}

func TestTheTablesSayWhatIsWhereAndWhatIsLeftToDo(t *testing.T) {
	for name, c := range map[string]struct {
		script, table string
		want          []string
	}{
		"all home": {"", "where", nil},
		"kits inside kits, and who holds the outermost": {`
			direct BOX home>at:V1 hold=Crew2 -> ok straight_off two_person
			take_out SAW home>at:V1 hold=Crew1 -> ok`, "where",
			[]string{"BAG 1 at:V1 Crew2", "BOX 1 at:V1 Crew2", "MASK 5 at:V1 Crew2", "O2 1 at:V1 Crew2", "PUNCH 1 at:V1 Crew2",
				"SAW 2 at:V1 Crew1+Crew2"}},
		"contents add to pieces and weight, not to lines": {`
			direct BOX home>at:V1 -> ok straight_off two_person
			take_out SAW home>at:V1 -> ok
			pull NLIGHT home>tarp -> ok`, "checkpoints",
			[]string{"R1 at:V1 lines 2 pieces 11 lb 51.5", "R2 tarp lines 1 pieces 1 lb 5"}},
		"what leaves and what comes back": {`
			use TAPE home>used -> ok
			take_out SAW home>tarp -> ok
			lend CONE 2 home>with:MED9 hold=Medic -> ok
			pull NLIGHT home>tarp -> ok
			carry NLIGHT tarp>riding:R1 -> ok`, "leaving", []string{"CONE 2 with:MED9", "SAW 1 tarp"}},
		"to bring back": {`
			lend CONE 2 home>with:MED9 hold=Medic -> ok
			pull NLIGHT home>tarp -> ok
			carry NLIGHT tarp>riding:R1 -> ok`, "back", []string{"CONE 2 with:MED9 Medic", "NLIGHT 1 riding:R1 "}},
		"ready": {`
			tag CONE 2 -> ok
			count CONE 5 -> warned short
			check DRILL read=battery=3 -> warned low
			pull LIGHT home>tarp -> ok
			stow LIGHT tarp>home -> ok
			pull NLIGHT home>tarp -> ok`, "ready",
			[]string{"R1 cone full 6 least 4 now 3 enough false", "R1 drill full 1 least 1 now 0 enough false"}},
		"ready, short": {"tag CONE 2 -> ok", "ready", []string{"R1 cone full 6 least 4 now 4 enough true"}},
		"away": {`
			charge DRILL home>charging -> ok
			bag BLANKET home>bagged -> ok
			pull LIGHT home>tarp -> ok
			direct ROPE home>at:V1 -> ok straight_off
			tag ROPE read=cut -> ok
			lend CAN home>with:MED9 -> ok
			use TAPE 2 home>used -> ok
			count TAPE 7 -> warned unlogged_use
			count CONE 4 -> warned short
			stop_looking CONE by=CHIEF unexplained>lost -> ok`, "end",
			[]string{"BLANKET 1 bagged: laundry; out of service", "CAN 1 with:MED9: bring back from MED9", "CONE 1 lost: lost report; replace",
				"CONE 1 unexplained: look for it", "DRILL 1 charging: charge; not ready", "LIGHT 1 tarp: still on the tarp",
				"ROPE 1 at:V1: still out; out of service: cut", "TAPE 3 used: restock (2 logged, 1 found at count)"}},
		"home, but": {`
			tag LIGHT note=cracked -> ok
			override DRILL by=CHIEF read=battery -> ok
			pull DRILL home>tarp -> ok
			stow DRILL tarp>home read=battery=70;clean=yes -> ok overridden
			pull BLANKET 2 home>tarp -> ok
			stow BLANKET 2 tarp>home read=dry=no;as_is -> warned not_ready
			pull ROPE home>tarp -> ok
			stow ROPE tarp>home read=rope=no;as_is -> warned not_ready out_of_service`, "end",
			[]string{"BLANKET 2 home: on rig, not ready: clean unanswered;dry=no", "DRILL 1 home: on rig with officer override: battery=70",
				"LIGHT 1 home: out of service: cracked", "ROPE 1 home: out of service: rope=no"}},
		"one that was waved through and one that was not": {`
			override BLANKET by=CHIEF read=dry -> ok
			pull BLANKET 2 home>tarp -> ok
			stow BLANKET tarp>home read=clean=yes;dry=no -> ok overridden
			stow BLANKET tarp>home read=clean=no;dry=yes;as_is -> warned not_ready`, "end",
			[]string{"BLANKET 2 home: on rig, not ready: dry=no;clean=no"}},
		"kits": {`
			take_out SAW home>tarp -> ok
			use MASK 5 home>used -> ok`, "end",
			[]string{"BOX 1 home: short kit, usable", "MASK 5 used: restock (5 logged, 0 found at count)", "SAW 1 tarp: still on the tarp"}},
		"a kit that cannot be used": {"take_out SAW 2 home>tarp -> ok", "end",
			[]string{"BOX 1 home: short kit, not usable", "SAW 2 tarp: still on the tarp"}},
		"a kit with a tagged piece inside, and open itself": {`
			tag O2 read=empty -> ok
			check BOX read=count=no -> warned failed`, "end",
			[]string{"BAG 1 kit:BOX: complete, not fit", "BOX 1 home: on rig, not ready: count=no; complete, not fit", "O2 1 kit:BAG: out of service: empty"}},
		"what is in a kit that is out is not home": {`
			tag O2 read=empty -> ok
			pull BOX home>tarp -> ok two_person`, "end", []string{"BOX 1 tarp: still on the tarp"}},
	} {
		l := yard()
		runs(t, l, c.script)
		got := tables(l.State)[c.table]
		if fmt.Sprintf("%q", got) != fmt.Sprintf("%q", c.want) {
			t.Errorf("%s:\n%q\nwant\n%q", name, got, c.want)
		}
	}
}

func TestTheProofAddsUpLineByLine(t *testing.T) {
	l := yard()
	runs(t, l, `direct CONE 2 home>at:V1 -> ok straight_off
		lend CONE home>with:MED9 -> ok
		count CONE 2 -> warned short
		use SAW home>used -> warned not_consumable`)
	for _, r := range l.State.Proof() {
		sum := 0
		for _, n := range r.By {
			sum += n
		}
		if sum != r.Quantity {
			t.Errorf("%s: %v is not %d", l.State.Dept.Items[r.Line].ID, r.By, r.Quantity)
		}
		if l.State.Dept.Items[r.Line].ID == "CONE" && r.By != [11]int{2, 0, 2, 0, 1, 0, 0, 0, 0, 1, 0} {
			t.Errorf("CONE: %v in the order of %v", r.By, model.PlaceKinds)
		}
	}
	want := model.Account{CameOff: 5, Home: 0, Out: 2, With: 1, Used: 1, Unexplained: 1}
	if a := l.State.Account("S", ""); a != want || !a.Adds() {
		t.Errorf("%+v", a)
	}
	runs(t, l, "return CONE 2 at:V1>tarp -> ok\nstow CONE 2 tarp>home -> ok")
	want.Out, want.Home = 0, 2
	if a := l.State.Account("S", "R1"); a != want || l.State.Account("S", "R2") != (model.Account{}) {
		t.Errorf("%+v", a)
	}
	l.Open("T", "S")
	want.CameOff, want.Home = 3, 0
	if a := l.State.Account("T", ""); a != want {
		t.Errorf("in the next scene %+v", a)
	}
	if err := modeltest.Check(l.State); err != nil {
		t.Error(err)
	}
}
