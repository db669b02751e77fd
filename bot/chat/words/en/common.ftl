and = { $first } and { $last }
not-linked = This is a private study helper, and this chat isn’t linked to anybody. If a tutor sent you a link, open it once more, please.
leave-group = I only talk with people one by one, so I’m leaving this group. Please write to me in a chat of our own.
file-missing = A file that belongs here couldn’t be made just now. Please ask for it once more in a while.
trouble = Something went wrong on our side. What you sent is safe. Please go on in a few minutes.
not-for-you-gone = That button has had its day. What is open now stands further down.
not-for-you-other = That one belongs to somebody else who uses this phone.
not-for-you-grown-up = A grown-up has to press that one.
not-for-you-student = That one is for the student. Hand over the phone first.
not-for-you-not-earned = The worked solution opens after a try with a hint, or when you’ve asked for help twice. Have a go first.
not-for-you-too-early = You can stop from the middle of the review on. If today is too much, */small* makes it short.
not-for-you-no-student = Nobody shares this phone.

help-student = Here is what you can do.
    
    Type your answer as you’d say it: { $examples }. To answer an older question, reply to its message.
    
    Stuck? Press **Hint** or write *idk*. Asking costs nothing.
help-shared = Hand the phone to a child with /hand, and take it back with /back.
help-parent = Each evening you get one message for each child. Nothing needs grading.
help-tutor = Each change is shown first, and /undo takes back the last one.
no-such-command = I don’t know that command. /help shows what there is.
no-such-command-near = I don’t know that command. Did you mean { $near }? /help shows the rest, with examples.
not-for-you-no-consent = A parent has to agree first, by sending /agree (on a shared phone, /back comes before it). Then we start.
