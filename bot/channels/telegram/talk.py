"""What only this channel says. Everything about circuits is said elsewhere."""

from core.said import say

INVITATION_ONLY = say("This bot is by invitation. Ask who runs it for a code, then send: /start CODE")
CODE_IS_NO_GOOD = say("That code does not let in: mistyped, used, or over 2 days old")
WELCOME_IN = say("You are in")
WHAT_IT_DOES = say("Text the readings of a dead 24 V control circuit. Back come the verdict, the next test and the caution.")
FOR_EXAMPLE = say("You send:")
COMES_BACK = say("Back comes:")
MORE = say("What else it reads: /help")
OVER = say("That question is over. Typed, the answer still counts")
NOT_WORKED_OUT = say("This message could not be worked on. It is kept. Send it once more, or in other words")
SEE_ABOVE = say("Answered above")
NO_VOICE = say("Voice is not read here. Type the readings: pri 118V sec 0V")
NO_VIDEO = say("Video is not kept. Send a photo, and type the readings")
TEXT_AND_PHOTOS = say("Only text and photos are read here. Type the readings: pri 118V sec 0V")
ONLY_PHOTOS = say("Only photos are kept: JPEG, PNG or WebP, up to {limit} MB")
PHOTO_NOT_FETCHED = say("The photo could not be fetched. Send it again")
OWNER_ONLY = say("Only who runs the bot can do that")
INVITE = say("One person gets in with this, in the next 2 days:")
REMOVE_WHOM = say("Send: /remove NUMBER, as in /members")
NO_SUCH_MEMBER = say("Nobody with that number is in")
THIS_JOB = say("the job")
