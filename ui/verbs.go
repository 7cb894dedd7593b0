package ui

import (
	"tarpside/model"
	"tarpside/ui/words"
)

// verbName is an act in the words of the log.
func verbName(v model.Verb) string {
	if name := verbNames[v]; name != "" {
		return words.L(name)
	}
	return string(v) // of a program newer than this one
}

var verbNames = map[model.Verb]string{
	model.Open: words.K("open"), model.Arrive: words.K("arrive"), model.Note: words.K("note"), model.Relieve: words.K("relieve"),
	model.ClearUp: words.K("clear up"), model.Close: words.K("close"), model.PullOff: words.K("pull"), model.Direct: words.K("direct"),
	model.Hand: words.K("hand"), model.MoveTo: words.K("move"), model.Return: words.K("return"), model.TakeOut: words.K("take out"),
	model.Use: words.K("use"), model.Handover: words.K("handover"), model.Lend: words.K("lend"), model.Bag: words.K("bag"),
	model.Charge: words.K("charge"), model.Count: words.K("count"), model.Seen: words.K("seen"), model.Correct: words.K("correct"),
	model.Settle: words.K("settle"), model.CheckIt: words.K("check"), model.Tag: words.K("tag"), model.Override: words.K("override"),
	model.Stow: words.K("stow"), model.StowTagged: words.K("stow tagged"), model.Unstow: words.K("unstow"), model.Vouch: words.K("vouch"),
	model.Carry: words.K("carry"), model.TakeBack: words.K("take back"), model.Look: words.K("look"), model.Found: words.K("found"),
	model.Locate: words.K("locate"), model.StopLook: words.K("stop looking"), model.Match: words.K("match"), model.Release: words.K("release"),
	model.Accept: words.K("accept"), model.Leave: words.K("leave"), model.Restock: words.K("restock"), model.Recharge: words.K("recharge"),
	model.Clean: words.K("clean"), model.Repair: words.K("repair"), model.BringBack: words.K("bring back"),
	model.Stores: words.K("stores"), model.BlankNote: words.K("blank note"),
}

// answerWord is an answer to a check. What a department calls a bad answer is
// its own word and stays.
func answerWord(answer string) string {
	switch answer {
	case "yes":
		return words.L("yes")
	case "no":
		return words.L("no")
	case "short":
		return words.L("short")
	}
	return answer
}
