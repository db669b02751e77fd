"""The course: files in, lessons out; a template and a seed in, an item out.

`load_course(folder)` reads content, `draw(course, template, seed)` makes an item, `prove` checks every claim.
"""
