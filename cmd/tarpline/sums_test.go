package main

import (
	"errors"
	"math"
	"os"
	"regexp"
	"strings"
	"testing"
)

// flat is text without its line breaks.
func flat(text string) string { return strings.Join(strings.Fields(text), " ") }

// The figures are those of the worked sums, and of the sources that the tests
// of gauge and lift name.
func TestTheSumsGiveTheWorkedFigures(t *testing.T) {
	d := newDesk(t)
	for _, c := range []struct{ ask, want string }{
		{"oxygen -cylinder D -psi 1950 -flow 15", "oxygen left: 18 min by table (16 to 21 min)"},
		{"oxygen -cylinder d -psi 1950psi -flow 15L/min -keep 200psi", "oxygen left: 18 min by table (16 to 21 min)"},
		{"oxygen -cylinder D -psi 1950 -flow 15 -then 600@20", "oxygen left: 5 min by the readings (5 to 6 min)"},
		{"oxygen -cylinder D -psi 1950@100 -then 600@120min", "oxygen left: 5 min by the readings"},
		{"oxygen -cylinder D -psi 150 -flow 10", "0 min: 150 psi is not above the 200 psi kept back; change the cylinder now"},
		{"oxygen -litres 660 -full 1900 -psi 500 -flow 6 -keep 0", "oxygen left: 28 min by table"},
		{"oxygen -cylinder D -psi 1950 -flow 0", "no time can be said: nothing flows"},
		{"oxygen -cylinder D -ready", "ready from: 1150 psi"},
		{"oxygen -cylinder E -ready -flow 10 -for 15min", "ready from: 750 psi"},
		{"air -litres 1240 -full 4500 -psi 3000 -rate 40", "10 min to the alarm at 33%, 20 min to empty"},
		{"air -litres 1240 -full 4500 -psi 4050", "90% of full: recharge (the line is 4050 psi)"},
		{"air -litres 1240 -full 4500 -psi 4060 -alarm 25%", "no recharge"},
		{"battery -left 90@10 -then 66%@22 -stop 20", "battery left: 23 min by 2 readings, falling 2 points a minute"},
		{"battery -left 100 -full 40min -stop 0 -derate 30", "battery left: 28 min by table"},
		{"battery -left 100% -full 40 -stop 0 -temp 20F", "battery left: 28 min by table"},
		{"battery -left 3/4 -full 100 -temp 60", "battery left: 42 min by table"},
		{"fuel -left 75 -full 3.5h -stop 10", "fuel left: 2 h 16 min by table"},
		{"fuel -left 100 -tool chainsaw -stop 0", "(29 to 45 min)"},
		{"lift -load 46 -reach 14 -from 12 -to 24 -grip 0.95", "start 29.0, end 32.1: use 29.0 lb; index 1.58"},
		{"lift -load 78 -reach 14 -from 12 -to 22", "lift marks proposed: two people: over 51 lb"},
		{"lift -load 7 -reach 14 -from 12 -to 112", "hand it up, never solo: above 70 in"},
		{"lift -load 60 -reach 14 -from 12 -to 24 -people 2", "limit of the team: 68 lb"},
		{"lift -load 60 -reach 14 -from 12 -to 24 -people 3", "limit of the team: 76.5 lb"},
		{"lift -load 20 -reach 14 -from 12 -to 24 -slippery -onehand", "not applicable: lifted with one hand; on slippery ground"},
		{"lift -metric -load 20 -reach 25 -from 75 -to 75 -grip good", "start 23.0, end 23.0: use 23.0 kg; index 0.87"},
		{"lift -reach 10 -reach-end 20 -from 30 -to 30 -turn 0 -turn-end 30 -often 1 -hours 2", "index none: the weight is not known"},
	} {
		got := d.must(append([]string{"sums"}, strings.Fields(c.ask)...)...)
		fits(t, c.ask, got)
		if !strings.Contains(flat(got), c.want) {
			t.Errorf("%s:\n%s\nwant %s", c.ask, got, c.want)
		}
		for _, part := range []string{"\n    formula: ", "\n    source: ", "\n    limits: "} {
			if !strings.Contains(got, part) {
				t.Errorf("%s has no%s", c.ask, part)
			}
		}
	}
	if _, err := os.Stat(d.db); err == nil {
		t.Error("a sum made a department file")
	}
}

func TestWhatIsFromMemoryIsMarkedInTheAnswer(t *testing.T) {
	d := newDesk(t)
	for _, ask := range []string{"oxygen -cylinder D -psi 1950 -flow 15", "oxygen -cylinder D -psi 1950 -then 600@20", "oxygen -cylinder D -ready",
		"air -litres 1240 -full 4500 -psi 3000", "battery -left 80 -full 40", "fuel -left 75 -tool generator", "lift -load 46 -reach 14 -from 12 -to 24"} {
		if got := flat(d.must(append([]string{"sums"}, strings.Fields(ask)...)...)); !strings.Contains(got, "from memory") {
			t.Errorf("%s: %s", ask, got)
		}
	}
}

func TestSumsRefuseInWords(t *testing.T) {
	d := newDesk(t)
	for _, c := range []struct {
		code      int
		ask, says string
	}{
		{failed, "oxygen -cylinder D -psi 11500 -flow 15", "more than a D cylinder holds; did you mean 1150?"},
		{failed, "oxygen -cylinder Q -psi 1150 -flow 15", "the table has D, E, M, G, H and K"},
		{failed, "oxygen -cylinder D -psi -5 -flow 15", "0 or more"},
		{failed, "oxygen -cylinder D -psi 600 -flow 15 -then 1900@5", "went up"},
		{failed, "oxygen -cylinder D -ready -for 60", "a D cylinder cannot do that"},
		{failed, "battery -left 140 -full 40", "from 0 to 100 percent"},
		{failed, "battery -left 80", "take a second reading"},
		{failed, "fuel -left 80 -full 0", "full to empty"},
		{failed, "air -litres 0 -full 4500 -psi 1", "litres"},
		{failed, "lift -load -4 -reach 14 -from 12 -to 24", "the load must be a number from 0"},
		{failed, "lift -load 60 -reach 14 -from 12 -to 24 -people 4", "there is no figure for 4 people"},
		{misused, "oxygen -cylinder D -psi 1950", "it needs -flow"},
		{misused, "oxygen -cylinder D -flow 5", "it needs -psi"},
		{misused, "oxygen -psi 1950 -flow 15", "it needs -cylinder"},
		{misused, "oxygen -cylinder D -litres 5 -psi 1950 -flow 15", "not both"},
		{misused, "oxygen -cylinder D -psi 1,950 -flow 15", "no figure"},
		{misused, "oxygen -cylinder D -psi NaN -flow 15", "no figure"},
		{misused, "oxygen -cylinder D -psi 1950 -flow Inf", "no figure"},
		{misused, "oxygen -cylinder D -psi 1e3 -flow 15", "no figure"},
		{misused, "oxygen -cylinder D -psi 1950 -flow 15 -then 600@", "no figure"},
		{misused, "oxygen -cylinder D -psi", "something must stand behind"},
		{misused, "oxygen now", `it does not understand "now"`},
		{misused, "oxygen -fast", "there is no option -fast; try: tarpline sums help oxygen"},
		{misused, "battery -left 5/4 -full 40", "5 of 4 bars"},
		{misused, "battery -left x/4 -full 40", "lit bars are written as 3/4"},
		{misused, "battery -left 80 -full 40 -temp 500", "temperature"},
		{misused, "battery -left 80 -full 40 -temp 20 -derate 30", "it takes one"},
		{misused, "fuel -left 80 -tool kettle", "is not in the table (chainsaw"},
		{misused, "fuel -left 80 -temp 20", "there is no option -temp"},
		{misused, "lift -load 20kg -reach 14 -from 12 -to 24", "no figure"},
		{misused, "lift -load 20 -reach 14 -from 12", "it needs -to"},
		{misused, "lift -load 20 -reach 14 -from 12 -to 24 -grip firm", "good, fair or poor"},
		{misused, "lift -load 20 -reach 14 -from 12 -to 24 -people 0", "from 1 to 100"},
		{misused, "petrol", `there is no sum "petrol"`},
		{misused, "help petrol", `there is no sum "petrol"`},
	} {
		if errs := d.fails(c.code, append([]string{"sums"}, strings.Fields(c.ask)...)...); !strings.Contains(errs, c.says) {
			t.Errorf("%s: %q, want %q", c.ask, errs, c.says)
		}
	}
}

func TestEverySumExplainsItselfAndItsExampleWorks(t *testing.T) {
	d := newDesk(t)
	all := d.must("sums", "help")
	if d.must("sums") != all {
		t.Error("sums alone does not list them")
	}
	for _, s := range sums() {
		one := d.must("sums", "help", s.name)
		fits(t, s.name, one)
		if !strings.Contains(all, "    "+s.name+" ") || !strings.HasPrefix(one, "tarpline sums "+s.name+" ") || !strings.Contains(one, "\nExample\n\n    "+s.example) {
			t.Errorf("%s: %s", s.name, one)
		}
		if got := d.must("sums", s.name, "-h"); got != one {
			t.Errorf("%s -h is not its help", s.name)
		}
		if s.keyed { // its example has names of more than one word
			continue
		}
		for _, option := range regexp.MustCompile(`(?:^|[ \[])(-[a-z]+)`).FindAllStringSubmatch(s.words, -1) {
			if !strings.Contains(one, "    "+option[1]+" ") {
				t.Errorf("%s does not explain %s", s.name, option[1])
			}
		}
		d.must(strings.Fields(s.example)[1:]...)
	}
}

// below is a time or a figure under nothing.
var below = regexp.MustCompile(`(^|[ (:])-\d`)

func FuzzSums(f *testing.F) {
	for _, s := range []string{
		"oxygen -cylinder D -psi 1950 -flow 15 -then 600@20", "oxygen -litres 660 -full 1900 -psi 500@-3 -flow 6 -keep -0", "oxygen -cylinder H -ready -flow 15 -for 99",
		"oxygen -cylinder D -psi 2000 -then 1999.99@0.05 -then 1999.98@10", "air -litres 1240 -full 4500 -psi 3000 -rate 40 -alarm 25",
		"battery -left 90@10 -then 66@22", "battery -left 3/4 -full 40 -temp -20", "battery -left 0/4 -then 0/4@1 -stop 0", "fuel -left 75 -full 3.5h", "fuel -left 100 -tool generator",
		"lift -load 46 -reach 14 -from 12 -to 24 -grip poor -often 12.5 -hours 2", "lift -metric -reach 63 -from 0 -to 175 -turn 135", "lift -load 60 -reach 1 -from 1 -to 1 -people 3 -carried",
		"oxygen -psi NaN", "fuel -left Inf -full 1e400", "air -h",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		words := strings.Fields(text)
		if len(words) == 0 {
			return
		}
		for _, s := range sums() {
			if s.name != words[0] {
				continue
			}
			var out strings.Builder
			err := s.run(words[1:], &out)
			got := out.String()
			if strings.Contains(got, "NaN") || strings.Contains(got, "Inf") || below.MatchString(got) {
				t.Errorf("%s:\n%s", text, got)
			}
			var use usageOf
			if (err == nil) == (got == "") && !errors.As(err, &use) {
				t.Errorf("%s: %v and\n%s", text, err, got)
			}
		}
	})
}

func FuzzTheFiguresOfSums(f *testing.F) {
	for _, s := range []string{"1150", "0.5", "-0", "3/4@10", "66%@22", "3.5h", "210min", "NaN", "1e9", "--1", "1.2.3", "@", "/", "999999999999", "h", "%"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		figure := func(x float64, err error) {
			if math.IsNaN(x) || math.IsInf(x, 0) || err != nil && err.Error() == "" {
				t.Errorf("%q: %v %v", text, x, err)
			}
		}
		figure(amount(text, "psi", "%"))
		figure(lasting(text))
		_, minute, err := atMinute(text)
		figure(minute, err)
		l, err := level(text)
		figure(l.Percent, err)
		figure(l.Give, err)
		figure(l.Min, err)
	})
}
