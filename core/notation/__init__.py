"""PLAN <-> TEXT: a training plan as a coach would write it on paper. Doors: read.read_plan and write.write_plan.

It knows nothing of people, stores or exercise names; names are found by a function that is handed in.
"""
