package ui

import (
	"fmt"

	"tarpside/model"
	"tarpside/model/judge"
	"tarpside/ui/words"
)

// refusals are the replies that need no more than the piece's name, as they
// stand in the log.
var refusals = map[string]string{
	judge.Unanswered: words.K("Not logged: no answer was given. Blank is never a pass"),
	judge.NotOfficer: words.K("Only an officer of the agency that owns it may do that"),
	judge.NoOverride: words.K("Nobody may wave that check through. Tag it out of service, or take it home as it is"),
	judge.Tagged:     words.K("%s is out of service. It can ride home tagged"),
	judge.WasIssued:  words.K("%s was in use: answer its questions"),
	judge.NotContest: words.K("There is nothing to settle: nobody disputes where %s is"),
}

// replyText is the reply to an entry in the language of the window where it is
// one that this knows word for word, else as the log has it.
func (n *now) replyText(e *model.Entry) string {
	text := e.Reply.Text
	if e.Reply.Word != model.Refused {
		return text
	}
	name := ""
	if it := n.d.Item(e.Item); it != nil {
		name = it.Name
	}
	for _, reason := range e.Reply.Reasons {
		switch format := refusals[reason]; text {
		case "":
		case format:
			return words.L(format)
		case fmt.Sprintf(format, name):
			return words.F(format, name)
		}
	}
	return text
}
