### Machine-drafted, not yet reviewed by a speaker.
