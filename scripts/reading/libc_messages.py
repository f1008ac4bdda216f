"""Writes the errno texts of the GNU C Library's published message catalogues as entries of translations.yaml.

    apt-get download libc-l10n && dpkg -x libc-l10n_*.deb catalogues
    python3 scripts/reading/libc_messages.py catalogues >> knowledge/connection/reading/translations.yaml
"""
import gettext
import json
import sys

LANGUAGES = {
    'de': ['de'], 'fr': ['fr'], 'es': ['es'], 'it': ['it'], 'nl': ['nl'], 'pl': ['pl'],
    'pt': ['pt', 'pt_BR'], 'ja': ['ja'], 'zh': ['zh_CN', 'zh_TW'],
}
MESSAGES = {
    'Permission denied': 'errno-permission',
    'Device or resource busy': 'errno-busy',
    'Input/output error': 'errno-io',
    'Connection refused': 'socket-refused',
    'Connection timed out': 'socket-timed-out',
    'No route to host': 'socket-no-route',
    'Network is unreachable': 'socket-network-down',
}
SOURCE = 'GNU C Library 2.36, its message catalogues as in Debian libc-l10n 2.36-9+deb12u14; written by scripts/reading/libc_messages.py'

for message, entry in MESSAGES.items():
    print(f"- id: libc-{message.lower().replace('/', '-').replace(' ', '-')}\n  of: {entry}\n  texts:")
    for language, catalogues in LANGUAGES.items():
        texts = []
        for name in catalogues:
            with open(f'{sys.argv[1]}/usr/share/locale/{name}/LC_MESSAGES/libc.mo', 'rb') as file:
                text = gettext.GNUTranslations(file).gettext(message)
            if text != message and text not in texts:
                texts.append(text)
        if texts:
            print(f'    {language}: {json.dumps(texts, ensure_ascii=False)}')
    print(f"  source: '{SOURCE}'")
