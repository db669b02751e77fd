"""The student's school day, as use cases. In the order of the day:

`hours` what the clock has to do · `morning` plan, draw, push · `speaking` who holds the phone · `onward` what comes
next · `warm_up` number facts · `asking` how one item is asked · `reply` a reply is graded, `grading` what follows from
it · `stuck` hint, later, show me, ask the tutor · `paper` the whole sheet at once · `ways_out` small day, enough ·
`more` and `offers` more than the day holds · `assessment` tests · `besides` photos and other things · `evening` the
day closes · `talk` after the digest · `presses` which button is which.
"""
