package words

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// other speaks a language with a few texts of its own until the test ends.
func other(t *testing.T, texts map[string]string) {
	t.Helper()
	speakWith(t, func(text string) string {
		if s, ok := texts[text]; ok {
			return s
		}
		return text
	})
}

func speakWith(t testing.TB, change func(string) string) {
	t.Helper()
	was := speaks.Swap(&tongue{change: change})
	t.Cleanup(func() { speaks.Store(was) })
}

func TestASentenceOfTheModelIsSaidClauseByClause(t *testing.T) {
	other(t, map[string]string{
		"%s now %s": "%[2]s liegt jetzt %[1]s", "at %s": "bei %s", "on the tarp": "auf der Plane", "home": "zu Hause", "with %s": "bei %s",
		"%d asked, %d here": "hier nur %[2]d von %[1]d", "The rest": "Der Rest", "Already %s. Nothing changed": "Schon %s. Alles bleibt",
		"two people lift it": "zu zweit heben", "two claims: %s or %s. Go and look": "%s oder %s: geht nachsehen", "about %s": "rund %s",
		"%s + %d open searches": "%s, dazu %d Suchen", "The disk is full: nothing more could be written to %s": "Platte voll, %s bleibt wie es war", "%d still %s": "noch %d %s", "Not logged": "Nicht notiert",
		"by the readings": "nach den Ablesungen", "%d min": "%d Min.", "%d h %d min": "%d Std. %d Min.", "%s to %s": "%s bis %s", "%d to %d min": "%d bis %d Min.",
		"no place is called %q": "kein Ort heißt %q", "%s is out of service. It can ride home tagged": "%s ist defekt. Mit Zettel darf es heim",
	})
	for _, c := range [][2]string{
		{"Cutter now at V2", "bei V2 liegt jetzt Cutter"},
		{"4 Step chock now on the tarp; two people lift it; 2 still at V1", "auf der Plane liegt jetzt 4 Step chock; zu zweit heben; noch 2 bei V1"},
		{"4 asked, 1 here. The rest: 2 at V2, 1 on the tarp, 1 with Medic 9", "hier nur 1 von 4. Der Rest: 2 bei V2, 1 auf der Plane, 1 bei Medic 9"},
		{"Already home. Nothing changed", "Schon zu Hause. Alles bleibt"},
		{"Air bag, low, 12 t now at bank", "bei bank liegt jetzt Air bag, low, 12 t"}, // a name with cuts in it
		{"Bag at home now with Sgt. Roe; two people lift it", "bei Sgt. Roe liegt jetzt Bag at home; zu zweit heben"},
		{"Rope to go is out of service. It can ride home tagged", "Rope to go ist defekt. Mit Zettel darf es heim"},
		{`Not logged: no place is called "home; lost"`, `Nicht notiert: kein Ort heißt "home; lost"`},
		{"5 min by the readings (4 to 6 min)", "5 Min. nach den Ablesungen (4 bis 6 Min.)"},
		{"2 h 40 min to 3 h 5 min", "2 Std. 40 Min. bis 3 Std. 5 Min."},
		{"2 Bag now on the tarp; it is out of service", "auf der Plane liegt jetzt 2 Bag; it is out of service"},
		{"Ram now at V2; two claims: at V2 or home. Go and look", "bei V2 liegt jetzt Ram; bei V2 oder zu Hause: geht nachsehen"},
		{"about 5 to 9 min + 2 open searches: Ram, Bag", "rund 5 bis 9 Min., dazu 2 Suchen: Ram, Bag"},
		{"The disk is full: nothing more could be written to crew.db.", "Platte voll, crew.db bleibt wie es war."},
		{"Home at last.", "Home at last."},
	} {
		if got := Said(c[0]); got != c[1] {
			t.Errorf("%q is said as\n%q, want\n%q", c[0], got, c[1])
		}
	}
}

// rules are the formats of model and board in the table.
func rules(t testing.TB) (out []string) {
	t.Helper()
	table, err := English()
	if err != nil {
		t.Fatal(err)
	}
	for key, e := range table {
		if e.Description == Made {
			out = append(out, key)
		}
	}
	slices.Sort(out)
	if len(out) < 500 {
		t.Fatalf("only %d formats of model and board are in the table", len(out))
	}
	return out
}

// fill fills a format in with numbers, and names in letters that the
// pseudo-language leaves.
func fill(r *rand.Rand, format string) (args []any) {
	names := []string{"лом", "клин 4", "Бур", "пила, 2 шт", "№ 1 (новый)", "Сгт. Рой"}
	m := newMade(format, format)
	for k := range m.verbs {
		if m.verbs[k] == 'd' || k == 0 && m.weight <= 2 { // too little to be known by, but between numbers
			args = append(args, r.IntN(5000))
			continue
		}
		args = append(args, names[r.IntN(len(names))])
	}
	return args
}

var goVerb = strings.NewReplacer("%q", `"%v"`, "%s", "%v", "%d", "%v", "%g", "%v", "%w", "%v", "%.0f", "%v", "%.1f", "%v", "%.2f", "%v")

func TestASentenceComesBackFromTheFormatThatMadeIt(t *testing.T) {
	speakWith(t, pseudo)
	r := rand.New(rand.NewPCG(1, 1))
	for _, format := range rules(t) {
		for range 8 {
			args := fill(r, format)
			text := fmt.Sprintf(goVerb.Replace(format), args...)
			if got, want := Said(text), fmt.Sprintf(goVerb.Replace(pseudo(format)), args...); got != want {
				t.Errorf("%q is said as\n%q, want\n%q", text, got, want)
			}
		}
	}
}

func TestInEnglishASentenceStaysAsItIs(t *testing.T) {
	for _, format := range rules(t) {
		if got := Said(format); got != format {
			t.Errorf("%q is said as %q", format, got)
		}
	}
}

func FuzzSaid(f *testing.F) {
	for _, s := range []string{"", "%", "(", ". ", "4 asked, 1 here. The rest: 2 at V2", "a (b); c: d, e? f. g)", "\xff: \xfe", "5 min by", "1 1 1 1"} {
		f.Add(s)
	}
	itself, longer := &tongue{change: func(s string) string { return s }}, &tongue{change: pseudo}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 500 {
			return // no sentence
		}
		if got := Said(text); got != text {
			t.Fatalf("in English %q is said as %q", text, got)
		}
		if got := itself.said(text); got != text {
			t.Fatalf("where every format stands for itself %q is said as %q", text, got)
		}
		longer.said(text)
	})
}

func BenchmarkSaid(b *testing.B) {
	const text = "4 asked, 1 here. The rest: 2 at V2, 1 on the tarp"
	b.Run("English", func(b *testing.B) {
		for b.Loop() {
			Said(text)
		}
	})
	b.Run("another", func(b *testing.B) {
		speakWith(b, pseudo)
		for b.Loop() {
			Said(text)
		}
	})
	b.Run("another, first", func(b *testing.B) {
		speakWith(b, pseudo)
		for b.Loop() {
			speaks.Load().said(text)
		}
	})
}
