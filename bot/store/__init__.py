"""Where data rests: tables, migrations and statements. Knows no channel; of the world only its database."""
