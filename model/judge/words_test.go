package judge_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tarpside/model"
	"tarpside/model/modeltest"
)

func TestARefusalSaysWhatIsThereAndWhereTheRestIs(t *testing.T) {
	l := modeltest.New("A", modeltest.Yard())
	l.Open("S", "")
	if bad := modeltest.Script(l, `
		pull CONE 5 home>tarp -> ok
		hand CONE 2 tarp>at:V1 -> ok
		lend CONE tarp>with:MED9 -> ok
		pull LIGHT home>tarp -> ok
		pull DRILL home>tarp -> ok
		pull STRUT home>tarp -> ok`); bad != "" {
		t.Fatal(bad)
	}
	for row, want := range map[string][]string{
		"hand CONE 4 tarp>at:V2":                     {"4 asked", "2 here", "2 at V1", "1 with Medic 9", "1 home"},
		"pull LIGHT home>tarp":                       {"Already on the tarp"},
		"stow DRILL tarp>home read=battery=22":       {"DRILL", "battery=22", "clean unanswered"},
		"stow DRILL tarp>home read=battery=140":      {"140", "from 0 to 100"},
		"stow DRILL tarp>home rig=R2":                {"Rescue 1"},
		"stow STRUT tarp>home":                       {"CRATE1", "CRATE2"},
		"stow DRILL tarp>home read=volts=9":          {`"volts"`},
		"carry DRILL tarp>riding:X9":                 {"X9"},
		"stop_looking DRILL unexplained>lost":        {"0 here"},
		"settle DRILL >tarp":                         {"DRILL"},
		"override O2 by=CHIEF read=oxygen":           {"Nobody"},
		"vouch rig=X9":                               {"X9"},
		"hand tarp>at:V1":                            {"no item"},
		"hand CONE 2 tarp>at:V2 hold=Crew":           {"2 CONE now at V2"},
		"seen LIGHT tarp>at:V3":                      {"LIGHT now at V3", "elsewhere"},
		"count CONE 9":                               {"more than the books"},
		"leave rig=MED9":                             {"Medic 9 has 1 CONE"},
		"take_back CONE with:MED9>tarp":              {"CONE now on the tarp"},
		"pull SLEDGE home>tarp":                      {"SLEDGE", "no table"},
		"stow DRILL tarp>home read=battery=22;as_is": {"not ready"},
	} {
		a, err := modeltest.Read(row)
		if err != nil {
			t.Fatal(err)
		}
		e := l.Fork("A").Do(model.Entry{Act: a})
		for _, w := range want {
			if !strings.Contains(e.Reply.Text, w) {
				t.Errorf("%s: %q does not say %q", row, e.Reply.Text, w)
			}
		}
	}
}

func TestEveryRefusalAndEveryMoveIsSaidInWords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := modeltest.New("A", modeltest.Department(modeltest.Rand(rapid.Uint64().Draw(t, "department"))))
		l.Open("S", "")
		for _, seed := range rapid.SliceOfN(rapid.Uint64(), 0, 40).Draw(t, "rows") {
			e := l.Do(modeltest.Entry(modeltest.Rand(seed), l, "A", "B"))
			if (!e.Taken() || len(e.Moves) > 0) && len(e.Reply.Text) < 8 || strings.Contains(e.Reply.Text, "%!") {
				t.Fatalf("%s %v: %q", e.Verb, e.Reply.Reasons, e.Reply.Text)
			}
		}
	})
}
