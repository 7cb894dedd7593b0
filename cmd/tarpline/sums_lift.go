package main

import (
	"fmt"
	"io"
	"strings"

	"tarpside/model/lift"
	"tarpside/model/sum"
)

// ways are the options that say what the equation leaves out.
var ways = []struct {
	option, usage string
	outside       lift.Outside
}{
	{"onehand", "it is lifted with one hand", lift.OneHand},
	{"carried", "it is carried, not only lifted", lift.Carrying},
	{"pushed", "it is pushed, pulled or wheeled", lift.Pushing},
	{"slippery", "the ground is slippery", lift.Slippery},
	{"kneeling", "whoever lifts kneels or sits", lift.Kneeling},
	{"cramped", "there is no room to stand up", lift.Cramped},
	{"unstable", "the load shifts", lift.Unstable},
	{"hotcold", "it is very hot or cold", lift.HotOrCold},
}

// grip is an option in words, or as its multiplier.
func grip(l *lift.Lift) func(string) error {
	return func(text string) error {
		for g, word := range map[lift.Grip]string{lift.Good: "good", lift.Fair: "fair", lift.Poor: "poor"} {
			if strings.EqualFold(text, word) {
				l.Grip, l.Coupling = g, 0
				return nil
			}
		}
		x, err := amount(text)
		if err != nil || x <= 0 || x > 1 {
			return fmt.Errorf("a grip is good, fair or poor, or a multiplier such as 0.95")
		}
		l.Coupling = x
		return nil
	}
}

func sumLift(args []string, out io.Writer) error {
	a := ask("lift")
	var l lift.Lift
	a.BoolVar(&l.Metric, "metric", false, "the figures are kg and cm, not lb and in")
	// without units: 20kg must not be taken for 20 lb
	load := a.number("load", 0, "`N` lb; without it only the limit")
	reach := a.number("reach", 0, "`N` in from the ankles to the hands")
	reachEnd := a.number("reach-end", 0, "`N` in at the end, if it differs")
	from := a.number("from", 0, "`N` in above the floor, where the hands start")
	to := a.number("to", 0, "`N` in above the floor, where they end")
	turn := a.number("turn", 0, "`N` degrees that the load stands aside at the start")
	turnEnd := a.number("turn-end", 0, "`N` degrees that it stands aside at the end")
	often := a.number("often", 0.2, "`N` lifts a minute; without it 0.2 or fewer")
	hours := a.number("hours", 1, "`N` hours of it; without it up to one")
	people := a.Int("people", 1, "`N` people who lift it together")
	a.Func("grip", "`GRIP` is good, fair or poor, gloves make it worse; without it fair", grip(&l))
	l.Grip = lift.Fair
	outside := map[lift.Outside]*bool{}
	for _, w := range ways {
		outside[w.outside] = a.Bool(w.option, false, w.usage)
	}
	if err := a.read(args, "reach", "from", "to"); err != nil {
		return err
	}
	if *people < 1 || *people > 100 {
		return misuse("-people is from 1 to 100")
	}
	l.Load, l.Often, l.Hours = *load, *often, *hours
	l.From, l.To = lift.Hold{H: *reach, V: *from, A: *turn}, lift.Hold{H: *reach, V: *to, A: *turnEnd}
	if a.given["reach-end"] {
		l.To.H = *reachEnd
	}
	if *people > 1 {
		l.Outside = append(l.Outside, lift.Team)
	}
	for _, w := range ways {
		if *outside[w.outside] {
			l.Outside = append(l.Outside, w.outside)
		}
	}
	return tellLift(l, *people, out)
}

// tellLift writes the equation, the team's limit if there is a team, and the
// marks.
func tellLift(l lift.Lift, people int, out io.Writer) error {
	r, err := l.Work()
	if err != nil {
		return err
	}
	m, err := lift.Propose(l)
	if err != nil {
		return err
	}
	answers := []sum.Answer{r.Answer}
	if people > 1 {
		each := make([]float64, people)
		for i := range each {
			each[i] = lift.Constant(l.Metric)
		}
		team, err := lift.TeamLimit(m.Unit, each...)
		if err != nil {
			return err
		}
		team.Limits += fmt.Sprintf("; each one taken at the equation's most, %s %s, which no real lift allows in full", sum.Say(each[0], 0), m.Unit)
		answers = append(answers, team)
	}
	return tell(out, append(answers, m.Answer)...)
}
